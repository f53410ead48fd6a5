// What is written and not saved is not lost without a question; a reading that a link names is unfolded.

const form = document.getElementById("swatch-form");
const unsaved = document.getElementById("unsaved");
let kept = form.dataset.kept === "yes";

function tell() { unsaved.textContent = kept ? "" : "Not saved yet"; }

form.addEventListener("input", () => { kept = false; tell(); });
form.addEventListener("submit", () => { kept = true; });
addEventListener("beforeunload", (event) => { if (!kept) event.preventDefault(); });

function unfold() {
  const named = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const reading = named && named.closest("details.reading");
  if (reading && !reading.open) { reading.open = true; named.scrollIntoView(); }
}
addEventListener("hashchange", unfold);
document.addEventListener("click", (event) => { if (event.target.closest?.('a[href^="#"]')) setTimeout(unfold); });
unfold();
tell();
