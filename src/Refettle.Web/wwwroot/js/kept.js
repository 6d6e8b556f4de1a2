// Keeps entries and answers in this browser. An entry's place in its device's chain is its key, so two tabs that write
// at once cannot both take the same place: the second is refused and tries again.
const opened = new Promise((resolve, reject) => {
  const request = indexedDB.open("refettle", 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore("entries", { keyPath: ["car", "device", "sequence"] });
    request.result.createObjectStore("kept");
  };
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

async function within(store, mode, work) {
  const database = await opened;
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(store, mode, { durability: "strict" });
    const request = work(transaction.objectStore(store));
    transaction.oncomplete = () => resolve(request?.result ?? null);
    transaction.onabort = transaction.onerror = () => reject(transaction.error ?? request?.error);
  });
}

export const get = key => within("kept", "readonly", store => store.get(key));

export const put = (key, value) => within("kept", "readwrite", store => store.put(value, key));

const ofCar = car => IDBKeyRange.bound([car], [car, []]);

// The page's address tells which car is opened first: its entries are fetched while the program is still being started.
const first = /^\/car\/([^/%]+)/.exec(location.pathname)?.[1];
let ahead = first && read(first).catch(() => null);

export async function entryBytes(car) {
  const fetched = car === first && await ahead;
  ahead = null;
  return fetched || read(car);
}

// As Garage/EntryBytes.cs reads them.
async function read(car) {
  const rows = await within("entries", "readonly", store => store.getAll(ofCar(car)));
  const entries = rows.map(row => JSON.parse(row.text));
  const payloads = entries.map(entry => new TextEncoder().encode(entry.payload));
  const heads = entries.map((entry, i) => ({ entry: { ...entry, payload: "" }, sent: rows[i].sent, bytes: payloads[i].length }));
  return new Uint8Array(await new Blob([JSON.stringify(heads), "\0", ...payloads]).arrayBuffer());
}

export const keep = rows => within("entries", "readwrite", store => {
  for (const row of rows) store.put(row);
});

export async function add(row) {
  try {
    await within("entries", "readwrite", store => store.add(row));
    return true;
  } catch (error) {
    if (error?.name === "ConstraintError") return false;
    throw error;
  }
}

export function watchNetwork(page) {
  addEventListener("online", () => page.invokeMethodAsync("NetworkChanged"));
  addEventListener("visibilitychange", () => document.visibilityState === "visible" && page.invokeMethodAsync("NetworkChanged"));
}
