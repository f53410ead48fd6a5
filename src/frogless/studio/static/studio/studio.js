// What the pages do besides htmx: mark faulty fields, send switches when they change, say when the studio does not answer.

function mark() {
  for (const slot of document.querySelectorAll(".error[id]")) {
    const field = document.getElementById(slot.id.replace(/-error$/, ""));
    if (!field?.matches("input, select, textarea")) continue;
    if (slot.textContent.trim()) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
  }
}

function tell(sentence) {
  const status = document.getElementById("status");
  status.textContent = sentence;
  status.className = "note care";
}

function untell() {
  const status = document.getElementById("status");
  if (status.className !== "unseen") { status.className = "unseen"; status.textContent = ""; }
}

// A choice in a form that says so is sent as soon as it is made; its button is for pages without scripts.
document.addEventListener("change", (event) => {
  const form = event.target.closest?.("form[data-sends-itself]");
  if (form && !event.target.closest("[hx-trigger], [data-hx-trigger]")) form.requestSubmit();
});
for (const form of document.querySelectorAll("form[data-sends-itself]")) {
  for (const button of form.querySelectorAll("button.needless")) button.hidden = true;
}

// The because closes with Escape or its own button, and gives the focus back to the number that was asked.
let asked = null;
function closeBecause() {
  const panel = document.getElementById("because");
  if (!panel?.firstElementChild) return;
  panel.replaceChildren();
  asked?.focus();
}
document.addEventListener("click", (event) => {
  const why = event.target.closest?.("a.why");
  if (why) asked = why;
  if (event.target.closest?.("[data-closes-because]")) { event.preventDefault(); closeBecause(); }
});
document.addEventListener("keydown", (event) => { if (event.key === "Escape") closeBecause(); });

document.addEventListener("htmx:afterSettle", (event) => {
  mark();
  if (event.target.id === "because") event.target.querySelector("h2")?.focus();
});
document.addEventListener("htmx:sendError", () => tell("The studio does not answer. Start it again; what you wrote is still here."));
document.addEventListener("htmx:responseError", (event) => {
  const status = event.detail.xhr.status;
  if (status === 401) tell("The studio was started anew. Open the link that the terminal shows; what you wrote is still here.");
  else if (status === 503) tell("The library could not be written: the disk is full, or another program is using it. What you wrote is still here.");
  else if (status !== 409 && status !== 422) tell("This could not be worked out. What you wrote is still here.");
});
document.addEventListener("htmx:beforeSwap", (event) => {
  const status = event.detail.xhr.status;
  // A refusal with a sentence is shown like any answer.
  if (status === 409 || status === 422) { event.detail.shouldSwap = true; event.detail.isError = false; }
  if (status < 400) untell();
});
mark();
