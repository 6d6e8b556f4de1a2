// Keeps the screen on while the page is looked at. Browsers allow it for https and for this machine itself only.
let lock = null, wanted = false;

export const can = () => isSecureContext && "wakeLock" in navigator;

export const isOn = () => wanted;

export async function set(on) {
  wanted = on;
  if (!on) {
    await lock?.release();
    lock = null;
    return false;
  }
  try {
    lock = await navigator.wakeLock.request("screen");
  } catch {
    wanted = false;
  }
  return wanted;
}

// The browser lets go when the page is hidden.
document.addEventListener("visibilitychange", () => wanted && document.visibilityState === "visible" && set(true));
