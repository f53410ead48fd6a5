// A pattern under the pencil: line numbers and marks under the text, the way from a finding to its words, and putting right in place.

const area = document.getElementById("text");
const form = document.getElementById("editor");
const paper = document.getElementById("written");
const save = document.getElementById("save");
const unsaved = document.getElementById("unsaved");
const looked = document.getElementById("looked");
const putSaid = document.getElementById("put-said");
const said = document.getElementById("said");
const mirror = document.createElement("div");

let saved = "unsaved" in area.dataset ? null : area.value;
let sent = null;
let known = area.value;
let leaving = false;
let marks = [];
let lastPut = null;
let telling = 0;

document.documentElement.classList.add("scripted");
for (const button of document.querySelectorAll("[data-needless]")) button.hidden = true;
mirror.className = "mirror";
mirror.setAttribute("aria-hidden", "true");
area.before(mirror);
paper.classList.add("mirrored");

// --- places that stay with their words while one writes ---

function change(before, after) {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head += 1;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail += 1;
  return { from: head, to: before.length - tail, by: after.length - before.length };
}

function moved(place, { from, to, by }) {
  if (place.end <= from) return place;
  if (place.start >= to) return { ...place, start: place.start + by, end: place.end + by };
  return { ...place, gone: true };
}

function follow(before, after) {
  if (before === after) return;
  const done = change(before, after);
  marks = marks.map((mark) => (mark.gone ? mark : moved(mark, done)));
  if (lastPut) lastPut = moved(lastPut, done);
}

function placeOf(element, kind) {
  const { start, end, line, mark } = element.dataset;
  return { element, kind, number: Number(mark ?? 0), start: Number(start), end: Number(end), line: Number(line), gone: false };
}

function gather(text) {
  marks = [
    ...[...looked.querySelectorAll("li[data-mark]")].map((item) => placeOf(item, "finding")),
    ...[...looked.querySelectorAll("li[data-unclear]")].map((item) => placeOf(item, "unclear")),
    ...[...looked.querySelectorAll("a[data-start], button[data-put]")].map((item) => placeOf(item, "link")),
  ];
  follow(text, area.value);
}

// --- the copy under the text ---

function shownMarks() {
  const found = marks.filter((mark) => mark.kind !== "link" && !mark.gone && mark.end > mark.start);
  found.sort((one, other) => one.start - other.start || other.end - one.end);
  let last = 0;
  return found.map((mark) => ({ ...mark, start: Math.max(mark.start, last) })).filter((mark) => {
    if (mark.end <= mark.start) return false;
    last = mark.end;
    return true;
  });
}

function lineNode(number, text, start, own) {
  const key = `${number}\n${text}\n${own.map((mark) => `${mark.kind}${mark.number}:${mark.start - start}-${mark.end - start}`)}`;
  return { key, build() {
    const node = document.createElement("div");
    node.dataset.number = number;
    if (own.some((mark) => mark.kind === "finding")) node.className = "marked-line";
    else if (own.length) node.className = "unclear-line";
    let at = 0;
    for (const mark of own) {
      const from = Math.max(0, mark.start - start);
      const to = Math.min(text.length, mark.end - start);
      if (to <= from) continue;
      node.append(text.slice(at, from));
      const drawn = document.createElement("mark");
      if (mark.kind === "unclear") drawn.className = "of-unclear";
      drawn.dataset.number = mark.number;
      drawn.textContent = text.slice(from, to);
      node.append(drawn);
      at = to;
    }
    node.append(text.slice(at) || (at ? "" : "\u200b"));
    return node;
  } };
}

let drawn = [];
function draw() {
  const shown = shownMarks();
  let next = 0;
  let start = 0;
  const wanted = area.value.split("\n").map((text, index) => {
    const end = start + text.length;
    while (next < shown.length && shown[next].end <= start) next += 1;
    const own = [];
    for (let k = next; k < shown.length && shown[k].start < Math.max(end, start + 1); k += 1) own.push(shown[k]);
    const node = lineNode(index + 1, text, start, own);
    start = end + 1;
    return node;
  });
  let head = 0;
  while (head < wanted.length && head < drawn.length && wanted[head].key === drawn[head]) head += 1;
  let tail = 0;
  while (tail < Math.min(wanted.length, drawn.length) - head && wanted[wanted.length - 1 - tail].key === drawn[drawn.length - 1 - tail]) tail += 1;
  for (let k = drawn.length - tail - 1; k >= head; k -= 1) mirror.children[k].remove();
  const fresh = document.createDocumentFragment();
  for (const line of wanted.slice(head, wanted.length - tail)) fresh.append(line.build());
  mirror.insertBefore(fresh, mirror.children[head] ?? null);
  drawn = wanted.map((line) => line.key);
  here();
}

// --- from a finding to its words and back ---

function goTo(place) {
  const last = area.value.length;
  const lines = area.value.slice(0, Math.min(place.start, last)).split("\n").length;
  const start = place.gone ? area.value.split("\n").slice(0, place.line - 1).join("\n").length + (place.line > 1 ? 1 : 0) : place.start;
  const end = place.gone ? start : place.end;
  area.focus({ preventScroll: true });
  area.setSelectionRange(Math.min(start, last), Math.min(end, last));
  const node = mirror.children[(place.gone ? place.line : lines) - 1];
  if (node) paper.scrollTop = Math.max(0, node.offsetTop - paper.clientHeight / 3);
  const edges = paper.getBoundingClientRect();
  if (edges.top < 0 || edges.top > innerHeight / 2) paper.scrollIntoView({ block: "start" });
  here();
}

function here() {
  const at = area.selectionStart;
  const inside = document.activeElement === area
    ? marks.find((mark) => mark.kind === "finding" && !mark.gone && mark.start <= at && at <= mark.end) : null;
  for (const item of looked.querySelectorAll("li[data-mark]")) {
    const now = item === inside?.element;
    if (now && !item.classList.contains("here") && matchMedia("(min-width: 62rem)").matches) item.scrollIntoView({ block: "nearest" });
    item.classList.toggle("here", now);
  }
  for (const mark of mirror.querySelectorAll("mark")) mark.classList.toggle("here", Boolean(inside) && Number(mark.dataset.number) === inside.number);
}

document.addEventListener("click", (event) => {
  const link = event.target.closest?.("#looked a[data-finding], #looked a[data-start]");
  if (!link) return;
  const owner = "finding" in link.dataset ? link.closest("li") : link;
  const place = marks.find((mark) => mark.element === owner);
  if (!place) return;
  event.preventDefault();
  goTo(place);
});
document.addEventListener("selectionchange", () => { if (document.activeElement === area) here(); });

// --- putting right in place ---

function write(start, end, words) {
  area.focus({ preventScroll: true });
  area.setSelectionRange(start, end);
  // So that the browser's own undo knows it too.
  if (!document.execCommand("insertText", false, words)) {
    area.setRangeText(words, start, end, "end");
    area.dispatchEvent(new Event("input", { bubbles: true }));
  }
  area.dispatchEvent(new Event("put"));
}

function tellPut(sentence, offer) {
  putSaid.replaceChildren();
  if (!sentence) return;
  putSaid.append(sentence);
  if (!offer) return;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Take it back";
  button.addEventListener("click", () => {
    const put = lastPut;
    lastPut = null;
    if (put && !put.gone) { write(put.start, put.end, put.before); tellPut("Taken back."); } else tellPut("These words were changed since; undo with Ctrl+Z.");
  });
  putSaid.append(button);
}

document.addEventListener("click", (event) => {
  const button = event.target.closest?.("button[data-put]");
  if (!button) return;
  event.preventDefault();
  const place = marks.find((mark) => mark.element === button);
  if (!place || place.gone) { tellPut("These words were changed; it is being read again."); area.dispatchEvent(new Event("put")); return; }
  const words = button.dataset.put;
  const before = area.value.slice(place.start, place.end);
  write(place.start, place.end, words);
  lastPut = { start: place.start, end: place.start + words.length, before, gone: false };
  tellPut(`Put ${words} on line ${place.line}.`, true);
});

document.addEventListener("click", (event) => {
  const button = event.target.closest?.("button[name='leave']");
  if (!button) return;
  const box = document.getElementById(`kind-${button.value}`);
  if (!box) return;
  event.preventDefault();
  box.checked = true;
  box.dispatchEvent(new Event("change", { bubbles: true }));
  document.getElementById("findings-title").focus();
});

// --- writing, saving, leaving ---

function isUnsaved() { return area.value !== saved; }
function tellUnsaved() { unsaved.hidden = !isUnsaved(); }

area.addEventListener("input", () => {
  follow(known, area.value);
  known = area.value;
  draw();
  tellUnsaved();
});

document.addEventListener("keydown", (event) => {
  if (event.key.toLowerCase() !== "s" || !(event.ctrlKey || event.metaKey) || event.altKey) return;
  event.preventDefault();
  save.click();
});

let asked = area.value;
let open = [];
let focused = "";
document.addEventListener("htmx:beforeRequest", (event) => {
  if (event.detail.target === looked) asked = area.value;
});
document.addEventListener("htmx:beforeSwap", (event) => {
  if (event.detail.target !== looked) return;
  open = [...looked.querySelectorAll("details[open]")].map((details) => details.id);
  focused = looked.contains(document.activeElement) ? document.activeElement.closest("[id]").id : "";
});
document.addEventListener("htmx:afterSwap", (event) => {
  if (event.detail.target !== looked) return;
  for (const id of open) document.getElementById(id)?.setAttribute("open", "");
  // Whoever is at the findings stays there, though they are other ones by now.
  if (focused) {
    document.getElementById(focused)?.focus({ preventScroll: true });
    if (document.activeElement === document.body) document.getElementById("findings-title").focus({ preventScroll: true });
  }
  gather(asked);
  draw();
  tell();
});

// What is found is said once the writing has paused, and only when it is something else than before.
function tell() {
  clearTimeout(telling);
  const now = looked.querySelector("[data-told]")?.dataset.told ?? "";
  telling = setTimeout(() => { if (said.textContent !== now) said.textContent = now; }, 1200);
}

save.addEventListener("htmx:beforeRequest", () => { sent = area.value; });
save.addEventListener("htmx:afterRequest", (event) => {
  if (event.detail.successful) saved = sent;
  tellUnsaved();
});
form.addEventListener("submit", () => { leaving = true; });
addEventListener("pageshow", () => { leaving = false; });
addEventListener("beforeunload", (event) => { if (!leaving && isUnsaved() && area.isConnected) event.preventDefault(); });

const print = document.getElementById("print");
print.hidden = false;
print.addEventListener("click", () => window.print());

gather(area.value);
draw();
tellUnsaved();
