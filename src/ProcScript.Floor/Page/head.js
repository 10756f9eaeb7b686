// The line at the top: where one is, whether the server is reached, and who works here.

import { button, h } from "./dom.js";
import { change, whoWorks } from "./who.js";
import { phrase } from "./words.js";

/** Shows it. */
export function showHead(title, under, back) {
  const name = button(whoWorks() || phrase("head.who"), async () => { await change(); name.textContent = whoWorks() || phrase("head.who"); }, { class: "who", id: "who" });
  document.getElementById("head").replaceChildren(
    h("div", { class: "row" },
      back && h("a", { href: back.href, class: "back" }, back.label),
      h("div", { class: "title" }, h("h1", {}, title), under && h("p", {}, under)),
      name),
    h("p", { id: "reach", role: "status" }),
    h("div", { id: "notes" }));
  document.title = title;
  dispatchEvent(new Event("headshown"));
}

/** The name, as it stands now. */
export function showName() {
  const name = document.getElementById("who");
  if (name) {
    name.textContent = whoWorks() || phrase("head.who");
  }
}
