// Keeps what the pages are made of, so that they can be loaded anew without a network. What the server says comes first, and what is
// kept answers only when the server does not; but a file of the program whose name tells its content never changes, and is not asked for again. Entries and photos are kept elsewhere (js/kept.js, js/photo.js).
const Shelf = "pages";
const Patience = 5000;

const isOurs = url => url.origin === location.origin && url.protocol.startsWith("http") && !url.pathname.startsWith("/api/") && !url.pathname.startsWith("/pair");

const neverChanges = url => /^\/_framework\/.+\.[0-9a-z]{10}\.(wasm|js)$/.test(url.pathname);

addEventListener("install", () => skipWaiting());

addEventListener("activate", event => event.waitUntil(clients.claim()));

addEventListener("fetch", event => {
  if (event.request.method === "GET" && isOurs(new URL(event.request.url))) event.respondWith(answer(event));
});

addEventListener("message", event => event.waitUntil(keep(event.data)));

async function answer(event) {
  const { request } = event;
  // Every address of a page gives the same page.
  const name = request.mode === "navigate" ? "/index.html" : request.url;
  const kept = await find(name);
  if (kept && neverChanges(new URL(request.url))) return kept;
  const asked = fetch(request);
  event.waitUntil(asked.then(response => put(name, response.clone()), () => {}));
  if (!kept) return asked;
  return Promise.race([asked, tooLong()]).catch(() => kept);
}

const tooLong = () => new Promise((_, reject) => setTimeout(() => reject(new Error("The server takes too long.")), Patience));

// Where the browser gives no room, or forgot what it kept, the pages are as without this: what the server says still goes to them.
const find = name => caches.open(Shelf).then(shelf => shelf.match(name)).catch(() => undefined);

async function put(name, response) {
  if (!response.ok || response.redirected || response.type !== "basic") return;
  try {
    await (await caches.open(Shelf)).put(name, response);
  } catch (problem) {
    console.warn(`${name} was not kept for a time without a network: ${problem.message}`);
  }
}

// What was loaded before this began to listen.
async function keep(addresses) {
  for (const address of addresses.filter(address => isOurs(new URL(address)))) {
    if (await find(address)) continue;
    const response = await fetch(address).catch(() => null);
    if (response) await put(address, response);
  }
}
