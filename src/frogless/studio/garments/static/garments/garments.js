// The page of a garment: what was open stays open, the row that was read stays where it was, undo by keyboard.

let open = new Map();
let read = null;

function remember() {
  open = new Map([...document.querySelectorAll("details[id]")].map((one) => [one.id, one.open]));
  const row = [...document.querySelectorAll(".rows > li[id], h2[id], h3[id]")].find((one) => one.getBoundingClientRect().bottom > 60);
  read = row && window.scrollY > 100 ? { id: row.id, top: row.getBoundingClientRect().top } : null;
}

function restore() {
  for (const [id, was] of open) {
    const one = document.getElementById(id);
    if (one && was) one.open = true;
  }
  for (const button of document.querySelectorAll("form[data-sends-itself] button.needless, .knobs button.needless")) button.hidden = true;
}

function back() {
  const row = read && document.getElementById(read.id);
  if (row) window.scrollBy({ top: row.getBoundingClientRect().top - read.top, behavior: "instant" });
  read = null;
}

document.addEventListener("htmx:beforeSwap", remember);
document.addEventListener("htmx:oobAfterSwap", restore);
document.addEventListener("htmx:afterSwap", (event) => {
  restore();
  if (event.detail.target?.id === "garment" || event.target.id === "garment") back();
});

// What an example is looked at with stands in its address.
document.addEventListener("htmx:beforeSwap", (event) => {
  const { pathInfo, requestConfig, xhr } = event.detail;
  if (xhr.status === 200 && requestConfig?.verb === "get" && requestConfig.elt.matches("form.switches")) history.replaceState(null, "", pathInfo.finalRequestPath);
});

// Every form knows which text of the design it changes; what could not be made before may be made now.
document.addEventListener("turned", (event) => {
  for (const slot of document.querySelectorAll("#panel .error[data-of-draft]")) {
    slot.replaceChildren();
    document.getElementById(slot.id.replace(/-error$/, ""))?.removeAttribute("aria-invalid");
  }
  for (const field of document.querySelectorAll('input[name="base"]')) field.value = event.detail.base;
});

// What was typed or chosen since a form was sent is not lost when its answer sets the fields anew.
let sent = new Map();
const newer = new Map();
const fields = (root) => [...(root?.querySelectorAll?.("input:not([type=hidden]), select, textarea") ?? [])];
document.addEventListener("htmx:beforeRequest", (event) => {
  if (event.target.closest?.("#panel, #result")) sent = new Map(fields(document.getElementById("panel")).map((one) => [one.id, one.value]));
});
document.addEventListener("htmx:oobBeforeSwap", (event) => {
  for (const one of fields(event.detail.target)) if (sent.has(one.id) && sent.get(one.id) !== one.value) newer.set(one.id, one.value);
});
document.addEventListener("htmx:oobAfterSwap", () => {
  for (const [id, value] of newer) {
    const field = document.getElementById(id);
    if (field) field.value = value;
  }
  newer.clear();
});

// The number that was asked is not covered by its because.
let number = null;
document.addEventListener("click", (event) => { number = event.target.closest?.("a.why") ?? number; });
document.addEventListener("htmx:afterSettle", (event) => {
  if (event.target.id !== "because" || !number?.isConnected) return;
  const sheet = event.target.getBoundingClientRect();
  const asked = number.getBoundingClientRect();
  if (asked.right > sheet.left && asked.bottom > sheet.top - 12) window.scrollBy({ top: asked.bottom - sheet.top + 24, behavior: "instant" });
});

// A fault leads to the knob that it is about, wherever it is folded away.
document.addEventListener("click", (event) => {
  const link = event.target.closest?.("a.to-knob");
  const field = link && document.getElementById(link.hash.slice(1));
  if (!field) return;
  event.preventDefault();
  for (let fold = field.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
  field.focus();
});

// A field that is set elsewhere in the panel leaves the focus to the one that comes in its place.
let place = -1;
const FIELDS = "#knobs details[open] > form :is(input:not([type=hidden]), select, textarea)";
document.addEventListener("htmx:beforeSwap", () => { place = [...document.querySelectorAll(FIELDS)].indexOf(document.activeElement); });
document.addEventListener("htmx:afterSettle", () => {
  if (place < 0 || document.activeElement !== document.body) return;
  const fields = [...document.querySelectorAll(FIELDS)].filter((one) => one.checkVisibility());
  fields[Math.min(place, fields.length - 1)]?.focus({ preventScroll: true });
  place = -1;
});

// Undo and redo say that they were done, and keep the focus when there is nothing more to undo.
let walked = "";
document.addEventListener("htmx:beforeRequest", (event) => { if (event.target.matches?.("#history form")) walked = event.target.querySelector("#undo, #redo")?.id ?? ""; });
document.addEventListener("htmx:afterSettle", (event) => {
  if (!walked || event.target.id !== "garment") return;
  document.getElementById("status").textContent = document.getElementById("turned")?.textContent || (walked === "undo" ? "Undone." : "Redone.");
  const button = document.getElementById(walked);
  if (document.activeElement === document.body) (button?.disabled ? document.getElementById(walked === "undo" ? "redo" : "undo") : button)?.focus({ preventScroll: true });
  walked = "";
});

document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
  if (event.target.closest?.("input:not([type=radio], [type=checkbox]), textarea")) return;
  const button = document.getElementById(event.shiftKey ? "redo" : "undo");
  if (button && !button.disabled) { event.preventDefault(); button.click(); }
});

restore();
