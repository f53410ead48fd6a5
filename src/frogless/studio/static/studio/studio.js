// What the page does besides htmx: it marks the fields that have a fault, and says when the studio does not answer.

function mark() {
  for (const slot of document.querySelectorAll(".error")) {
    const field = document.getElementById(slot.id.replace(/-error$/, ""));
    if (!field?.matches("input, select, textarea")) continue;
    if (slot.textContent.trim()) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
  }
}

function tell(sentence) {
  const status = document.getElementById("status");
  status.textContent = sentence;
  status.classList.add("note", "caution");
  status.classList.remove("unseen");
}

document.addEventListener("htmx:afterSettle", mark);
document.addEventListener("htmx:sendError", () => tell("The studio does not answer. Start it again; what you wrote is still here."));
document.addEventListener("htmx:responseError", () => tell("This change could not be worked out. What you wrote is still here; “Draft it” says more."));
document.addEventListener("htmx:beforeSwap", (event) => {
  if (event.detail.xhr.status >= 400) return;
  const status = document.getElementById("status");
  status.classList.add("unseen");
  status.classList.remove("note", "caution");
});
