// The filters send themselves; the address follows, so that it can be kept, shared and gone back to.

const form = document.getElementById("filters");
const fold = form.querySelector("details");
const wide = matchMedia("(min-width: 62rem)");

for (const button of form.querySelectorAll("[data-needless]")) button.hidden = true;

// Where there is room they stand open; without scripts they unfold by hand.
function unfold() {
  if (wide.matches) fold.open = true;
  fold.classList.toggle("unfolded", wide.matches);
}
wide.addEventListener("change", unfold);
unfold();

form.addEventListener("htmx:afterOnLoad", () => {
  const chosen = new URLSearchParams([...new FormData(form)].filter(([, value]) => value.trim()));
  const query = chosen.toString();
  history.replaceState(null, "", query ? `?${query}` : location.pathname);
});
