// What is written and not saved is not lost without a question; a reading that a link names is unfolded.
// The form may be replaced while the page stays, so it is looked for each time.

const form = () => document.getElementById("swatch-form");
let kept = true;

function tell() {
  const unsaved = document.getElementById("unsaved");
  if (unsaved) unsaved.textContent = kept ? "" : "Not saved yet";
}

function begin() { kept = form()?.dataset.kept !== "no"; tell(); }

document.addEventListener("input", (event) => { if (form()?.contains(event.target)) { kept = false; tell(); } });
document.addEventListener("submit", (event) => { if (event.target === form()) kept = true; });
document.addEventListener("htmx:afterSettle", (event) => { if (event.target.id === "main") begin(); });
addEventListener("beforeunload", (event) => { if (!kept) event.preventDefault(); });

function unfold() {
  const named = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const reading = named && named.closest("details.reading");
  if (reading && !reading.open) { reading.open = true; named.scrollIntoView(); }
}
addEventListener("hashchange", unfold);
document.addEventListener("click", (event) => { if (event.target.closest?.('a[href^="#"]')) setTimeout(unfold); });
unfold();
begin();
