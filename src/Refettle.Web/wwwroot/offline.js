// Keeps what the pages are made of, so that they can be loaded anew without a network. What the server says comes first, and what is
// kept answers only when the server does not; but a file of the program whose name tells its content never changes, and is not asked for again. Entries and photos are kept elsewhere (js/kept.js, js/photo.js).
const Shelf = "pages";
const Patience = 5000;

const isOurs = url => url.origin === location.origin && !url.pathname.startsWith("/api/") && !url.pathname.startsWith("/pair");

const neverChanges = url => /^\/_framework\/.+\.[0-9a-z]{10}\.(wasm|js)$/.test(url.pathname);

addEventListener("install", () => skipWaiting());

addEventListener("activate", event => event.waitUntil(clients.claim()));

addEventListener("fetch", event => {
  if (event.request.method === "GET" && isOurs(new URL(event.request.url))) event.respondWith(answer(event.request));
});

addEventListener("message", event => event.waitUntil(keep(event.data)));

async function answer(request) {
  const shelf = await caches.open(Shelf);
  // Every address of a page gives the same page.
  const name = request.mode === "navigate" ? "/index.html" : request.url;
  const kept = await shelf.match(name);
  if (kept && neverChanges(new URL(request.url))) return kept;
  try {
    const response = await (kept ? Promise.race([fetch(request), tooLong()]) : fetch(request));
    if (response.ok && !response.redirected && response.type === "basic") await shelf.put(name, response.clone());
    return response;
  } catch (problem) {
    if (kept) return kept;
    throw problem;
  }
}

const tooLong = () => new Promise((_, reject) => setTimeout(() => reject(new Error("The server takes too long.")), Patience));

// What was loaded before this began to listen.
async function keep(addresses) {
  const shelf = await caches.open(Shelf);
  for (const address of addresses.filter(address => isOurs(new URL(address)))) {
    if (await shelf.match(address)) continue;
    const response = await fetch(address).catch(() => null);
    if (response?.ok && !response.redirected) await shelf.put(address, response);
  }
}
