// Starts the program. Of itself it would ask for each of its files once, and stop for good at the first that does not come: here a file is asked for
// again, and where that is in vain the page says so and is loaded anew as soon as the server answers. In a block of its own, so that none of its names is the whole page's.
{
  const Patience = 30000, Pause = 3000;

  const tell = words => {
    for (const line of document.querySelectorAll("#app > .opening > p, #shown .kept")) line.textContent = words;
  };

  const again = async () => {
    tell("A piece of the program did not come. It is tried again every few seconds …");
    do await new Promise(go => setTimeout(go, Pause));
    while (!await fetch("/index.html", { cache: "no-store" }).then(answer => answer.ok, () => false));
    location.reload();
  };

  setTimeout(() => tell("Opening the garage … That takes long: the server, or the way to it, is slow."), Patience);

  // What stops the start is told to nobody but here.
  const stops = event => {
    if (!/Failed to start platform|^download '/.test(event.reason?.message)) return;
    removeEventListener("unhandledrejection", stops);
    again();
  };

  if (globalThis.Blazor) {
    addEventListener("unhandledrejection", stops);
    Blazor.start({ configureRuntime: runtime => runtime.withConfig({ enableDownloadRetry: true }) })
      .then(() => removeEventListener("unhandledrejection", stops));
  } else {
    again();
  }
}
