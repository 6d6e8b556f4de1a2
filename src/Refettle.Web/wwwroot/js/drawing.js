// Zooms the drawing about the point between two fingers, or under the pointer with ctrl and the wheel. Panning is the browser's own scrolling.
const least = 0.2, most = 2.5, readable = 0.75;

export function watch(sheet) {
  const svg = sheet.querySelector("svg.plan");
  const fingers = new Map();
  let scale = 1, apart = 0;

  function zoomTo(wanted, x, y) {
    const next = Math.min(most, Math.max(least, wanted));
    const [left, top] = [(sheet.scrollLeft + x) / scale, (sheet.scrollTop + y) / scale];
    scale = next;
    svg.style.width = `${svg.viewBox.baseVal.width * scale}px`;
    svg.style.height = `${svg.viewBox.baseVal.height * scale}px`;
    sheet.scrollTo(left * scale - x, top * scale - y);
  }

  const middle = () => [sheet.clientWidth / 2, sheet.clientHeight / 2];
  const within = (x, y) => { const box = sheet.getBoundingClientRect(); return [x - box.left, y - box.top]; };

  function move(event) {
    if (!fingers.has(event.pointerId)) return;
    fingers.set(event.pointerId, event);
    if (fingers.size !== 2) return;
    const [a, b] = [...fingers.values()];
    const now = Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
    if (apart > 0) zoomTo(scale * now / apart, ...within((a.clientX + b.clientX) / 2, (a.clientY + b.clientY) / 2));
    apart = now;
  }

  const lift = event => { fingers.delete(event.pointerId); apart = 0; };
  sheet.addEventListener("pointerdown", event => fingers.set(event.pointerId, event));
  sheet.addEventListener("pointermove", move);
  for (const end of ["pointerup", "pointercancel", "pointerleave"]) sheet.addEventListener(end, lift);
  sheet.addEventListener("wheel", event => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    zoomTo(scale * Math.exp(-event.deltaY / 300), ...within(event.clientX, event.clientY));
  }, { passive: false });

  // A browser is content with a corner of a box that comes into focus by a key.
  sheet.addEventListener("focusin", event => {
    if (event.target.matches(".box:focus-visible")) event.target.scrollIntoView({ block: "nearest", inline: "nearest" });
  });

  const whole = () => Math.min(sheet.clientWidth / svg.viewBox.baseVal.width, sheet.clientHeight / svg.viewBox.baseVal.height);

  function show(step) {
    const box = svg.querySelector(`[data-step~="${step}"]`)?.getBoundingClientRect();
    if (!box) return;
    const [x, y] = within(box.left + box.width / 2, box.top + box.height / 2);
    sheet.scrollBy(x - sheet.clientWidth / 2, y - sheet.clientHeight / 2);
  }

  // What is hidden has no size yet; it begins when it is first seen.
  const seen = new ResizeObserver(() => {
    if (sheet.clientWidth === 0 || svg.viewBox.baseVal.width === 0) return;
    seen.disconnect();
    begin();
  });

  // All of it where it can still be read, else the step in question at full size.
  function begin() {
    if (whole() >= readable) zoomTo(Math.min(1, whole()), 0, 0);
    else show(svg.querySelector(".next")?.dataset.step.split(" ").at(-1) ?? 0);
  }

  seen.observe(sheet);
  return {
    show,
    zoom: factor => zoomTo(scale * factor, ...middle()),
    fit: () => zoomTo(whole(), 0, 0),
    stop: () => seen.disconnect(),
  };
}
