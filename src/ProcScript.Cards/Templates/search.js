(() => {
  "use strict";

  // Finds steps, energies, bags and cards by their words, whatever their accents and capitals.
  const most = 40;
  const input = document.querySelector("[data-do=find]");
  const found = document.querySelector(".find .found");
  const counted = document.querySelector(".find .counted");
  const plain = text => text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/\s+/g, " ");
  const nested = ".step, .energy, .label";

  const headOf = place => place.matches(".step")
    ? `${place.querySelector(".no").textContent.trim()}  ${place.querySelector(".act").textContent.trim()}`
    : place.querySelector("h1, h2, h3").textContent.trim();

  const ownText = place => place.matches(".card")
    ? Array.from(place.querySelectorAll("h1, h2, h3, p, li, th, td, caption")).filter(line => !line.closest(nested)).map(line => line.textContent).join(" ")
    : place.textContent;

  // Read when it is first asked for: a long pack has much text.
  let places = null;
  const all = () => places ??= Array.from(document.querySelectorAll(`.card, ${nested}`))
    .filter(place => place.id)
    .map(place => ({ id: place.id, head: headOf(place), text: plain(ownText(place)) }));

  const show = () => {
    const words = plain(input.value).split(" ").filter(Boolean);
    const hits = words.length === 0 ? [] : all().filter(place => words.every(word => place.text.includes(word)));
    counted.textContent = words.length === 0 ? "" : hits.length === 1 ? inWords("one-place") : inWords("places", { count: hits.length });
    found.replaceChildren(...hits.slice(0, most).map(hit => {
      const line = document.createElement("li");
      const link = document.createElement("a");
      link.href = `#${hit.id}`;
      link.textContent = hit.head;
      line.append(link);
      return line;
    }));
  };

  input.addEventListener("input", show);
  input.addEventListener("keydown", event => {
    if (event.key === "Enter") found.querySelector("a")?.click();
    if (event.key === "Escape") {
      input.value = "";
      show();
    }
  });
  document.querySelector(".find").hidden = false;

  // On a narrow screen the list of cards would lie over the card that it leads to.
  const list = document.querySelector(".cards details");
  list.addEventListener("click", event => {
    if (event.target.closest("a")) list.open = false;
  });
})();
