// A car's page as it was shown last stands there, to be read and not to be pressed, until the program has begun and draws it anew: a phone that dropped the page takes
// seconds for that. It says of when it is in place of what is kept. Inert, so nothing in it answers, and after #app, so that what looks for the page's own heading finds the new one.
{
  const Prefix = "shown ", Pages = 8, MostCharacters = 400_000;
  const app = document.getElementById("app");
  const there = "main:not([aria-busy])";
  const name = () => Prefix + location.pathname + location.search;

  const onTheWall = at => new Date(at - new Date(at).getTimezoneOffset() * 60_000).toISOString();

  // Short, so that nothing moves when it gives way.
  function told(at) {
    const [day, time] = onTheWall(at).split("T");
    return `As of ${onTheWall(Date.now()).startsWith(day) ? time.slice(0, 5) : day}, opening`;
  }

  function recall() {
    const kept = localStorage.getItem(name());
    if (!kept || app.querySelector(there)) return;
    const { at, html } = JSON.parse(kept);
    const shown = document.createElement("div");
    shown.id = "shown";
    shown.inert = true;
    shown.innerHTML = html;
    for (const line of shown.querySelectorAll(".kept")) line.textContent = told(at);
    app.after(shown);
    new MutationObserver((_, watch) => {
      if (!app.querySelector(there)) return;
      watch.disconnect();
      shown.remove();
    }).observe(app, { subtree: true, childList: true, attributes: true, attributeFilter: ["aria-busy"] });
  }

  function keep() {
    if (!location.pathname.startsWith("/car/") || !app.querySelector(`.frame ${there}`)) return;
    const copy = app.cloneNode(true);
    // A photo's address is good for this loading of the page only; its words stay.
    for (const photo of copy.querySelectorAll("img[src^='blob:']")) photo.removeAttribute("src");
    // What a script has styled: the pages' policy lets no markup do so.
    for (const one of copy.querySelectorAll("[style]")) one.removeAttribute("style");
    if (copy.innerHTML.length > MostCharacters) return localStorage.removeItem(name());
    localStorage.setItem(name(), JSON.stringify({ at: Date.now(), html: copy.innerHTML }));
    forgetOldest();
  }

  function forgetOldest() {
    const names = Object.keys(localStorage).filter(one => one.startsWith(Prefix));
    const at = one => JSON.parse(localStorage.getItem(one)).at;
    for (const old of names.sort((a, b) => at(b) - at(a)).slice(Pages)) localStorage.removeItem(old);
  }

  // Where the browser gives no room, a page opens as one that was never shown.
  const tried = work => () => {
    try {
      work();
    } catch (problem) {
      console.warn(`What this page showed last: ${problem.message}`);
    }
  };

  tried(recall)();
  addEventListener("pagehide", tried(keep));
  addEventListener("visibilitychange", () => document.visibilityState === "hidden" && tried(keep)());
}
