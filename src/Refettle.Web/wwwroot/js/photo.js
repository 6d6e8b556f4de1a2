// Pictures: made smaller and upright here, and kept in this browser until the server has them. They have a database of their own, so that a
// tab with an older page never holds up the logbook's.
const opened = new Promise((resolve, reject) => {
  const request = indexedDB.open("refettle-photos", 1);
  request.onupgradeneeded = () => request.result.createObjectStore("photos", { keyPath: "hash" });
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

async function within(mode, work) {
  const database = await opened;
  return new Promise((resolve, reject) => {
    const transaction = database.transaction("photos", mode, { durability: "strict" });
    const request = work(transaction.objectStore("photos"));
    transaction.oncomplete = () => resolve(request?.result ?? null);
    transaction.onabort = transaction.onerror = () => reject(transaction.error ?? request?.error);
  });
}

export const keep = (hash, bytes, small) => within("readwrite", store => store.put({ hash, bytes: new Blob([bytes]), small, sent: 0 }));

export const waiting = async () => (await within("readonly", store => store.getAll())).filter(row => !row.sent).map(row => row.hash);

export async function bytes(hash) {
  const row = await within("readonly", store => store.get(hash));
  return row ? new Uint8Array(await row.bytes.arrayBuffer()) : null;
}

// What the server has is dropped here, but for the small ones that lists show without a network.
export async function sent(hash) {
  const row = await within("readonly", store => store.get(hash));
  if (row?.small) await within("readwrite", store => store.put({ ...row, sent: 1 }));
  else await within("readwrite", store => store.delete(hash));
}

const addresses = new Map();

export async function address(hash) {
  if (!addresses.has(hash)) {
    const row = await within("readonly", store => store.get(hash));
    if (!row) return null;
    addresses.set(hash, URL.createObjectURL(row.bytes));
  }
  return addresses.get(hash);
}

function drawn(image, longest) {
  const scale = Math.min(1, longest / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  const context = canvas.getContext("2d");
  context.imageSmoothingQuality = "high";
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
}

async function jpeg(canvas, quality) {
  const blob = await new Promise(done => canvas.toBlob(done, "image/jpeg", quality));
  return new Uint8Array(await blob.arrayBuffer());
}

function grey(canvas) {
  const { data } = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height);
  const values = new Uint8Array(canvas.width * canvas.height);
  for (let i = 0; i < values.length; i++) values[i] = 0.299 * data[4 * i] + 0.587 * data[4 * i + 1] + 0.114 * data[4 * i + 2];
  return values;
}

// The picture that was chosen, upright, in the sizes asked for; null when this browser cannot show it.
export async function prepare(input, longest, small, sharpness) {
  const file = input.files[0];
  if (!file) return null;
  let image;
  try {
    image = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    return null;
  }
  const picture = drawn(image, longest), judged = drawn(picture, sharpness);
  const result = {
    width: picture.width, height: picture.height, picture: await jpeg(picture, 0.85), small: await jpeg(drawn(picture, small), 0.75),
    grey: grey(judged), greyWidth: judged.width, greyHeight: judged.height,
  };
  image.close();
  return result;
}

export async function original(input) {
  const file = input.files[0];
  return file ? new Uint8Array(await file.arrayBuffer()) : null;
}

export const clear = input => { input.value = ""; };
