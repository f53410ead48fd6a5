// The text of a design: line numbers, marks at faulty lines, Ctrl+S, and a question before changes are left behind.

const area = document.getElementById("text");
const form = document.getElementById("editor");
const save = document.getElementById("save");
const unsaved = document.getElementById("unsaved");
const gutter = document.createElement("pre");

let saved = "unsaved" in area.dataset ? null : area.value;
let sent = null;
let leaving = false;
let drawn = "";

for (const button of document.querySelectorAll("[data-needless]")) button.hidden = true;

gutter.className = "gutter";
gutter.setAttribute("aria-hidden", "true");
area.before(gutter);

function faultyLines() {
  return new Set([...document.querySelectorAll("#checked [data-line]")].map((link) => Number(link.dataset.line)));
}

function number() {
  const lines = area.value.split("\n").length;
  const faulty = faultyLines();
  const wanted = `${lines} ${[...faulty]}`;
  if (wanted === drawn) return;
  drawn = wanted;
  const parts = document.createDocumentFragment();
  let run = "";
  for (let line = 1; line <= lines; line += 1) {
    if (!faulty.has(line)) { run += `${line}\n`; continue; }
    parts.append(run);
    run = "";
    const mark = document.createElement("span");
    mark.className = "faulty-line";
    mark.textContent = `✗ ${line}\n`;
    parts.append(mark);
  }
  parts.append(run);
  gutter.replaceChildren(parts);
  gutter.scrollTop = area.scrollTop;
}

function isUnsaved() { return area.value !== saved; }

function tellUnsaved() { unsaved.hidden = !isUnsaved(); }

function goTo(line) {
  const lines = area.value.split("\n");
  const start = lines.slice(0, line - 1).reduce((sum, text) => sum + text.length + 1, 0);
  area.focus();
  area.setSelectionRange(start, start + (lines[line - 1] ?? "").length);
  const height = parseFloat(getComputedStyle(area).lineHeight);
  area.scrollTop = Math.max(0, (line - 6) * height);
  area.scrollLeft = 0;
}

area.addEventListener("scroll", () => { gutter.scrollTop = area.scrollTop; });
area.addEventListener("input", () => { number(); tellUnsaved(); });
gutter.addEventListener("click", (event) => {
  const mark = event.target.closest(".faulty-line");
  if (mark) goTo(Number(mark.textContent.replace("✗", "").trim()));
});

document.addEventListener("click", (event) => {
  const link = event.target.closest?.("a[data-line]");
  if (!link) return;
  event.preventDefault();
  goTo(Number(link.dataset.line));
});

document.addEventListener("keydown", (event) => {
  if (event.key.toLowerCase() !== "s" || !(event.ctrlKey || event.metaKey) || event.altKey) return;
  event.preventDefault();
  save.click();
});

save.addEventListener("htmx:beforeRequest", () => { sent = area.value; });
save.addEventListener("htmx:afterRequest", (event) => {
  if (event.detail.successful) saved = sent;
  tellUnsaved();
});
document.addEventListener("htmx:afterSettle", number);

form.addEventListener("submit", () => { leaving = true; });
addEventListener("pageshow", () => { leaving = false; });
addEventListener("beforeunload", (event) => { if (!leaving && isUnsaved() && area.isConnected) event.preventDefault(); });

number();
tellUnsaved();
