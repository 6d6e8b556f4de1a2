// Lets the page be loaded anew without a network, where the browser allows it: https, or this machine itself.
if (isSecureContext && "serviceWorker" in navigator) {
  const loaded = new Set([new URL("/index.html", location).href]);
  let worker = null;
  const tell = () => {
    if (!worker || loaded.size === 0) return;
    worker.postMessage([...loaded]);
    loaded.clear();
  };
  new PerformanceObserver(list => {
    for (const entry of list.getEntries()) loaded.add(entry.name);
    tell();
  }).observe({ type: "resource", buffered: true });
  navigator.serviceWorker.register("/offline.js").then(() => navigator.serviceWorker.ready).then(ready => {
    worker = ready.active;
    tell();
  }).catch(problem => console.warn(`Without a network this page cannot be loaded anew: ${problem.message}`));
}
