// What keys do beyond what a browser gives them.
// Escape closes what the focus is in, the innermost first, and goes back to what opened it. A search empties itself first; a list to choose from has an Escape of its own.
const hasItsOwn = field => field.matches("select") || field.matches("[type=search]") && field.value !== "";

const openerIn = around => around.matches("details[open]")
  ? around.querySelector("summary")
  : around.querySelector(":scope > [aria-expanded=true], :scope > .what > [aria-expanded=true]");

function leave(from) {
  for (let around = from; around && around !== document.body; around = around.parentElement) {
    const opener = openerIn(around);
    if (!opener) continue;
    opener.click();
    opener.focus();
    return;
  }
}

document.addEventListener("keydown", event => {
  if (event.key === "Escape" && !hasItsOwn(event.target)) leave(event.target);
  // The space bar presses a box of the drawing; it does not scroll the page away as well.
  if (event.key === " " && event.target.matches("g[role=button]")) event.preventDefault();
});
