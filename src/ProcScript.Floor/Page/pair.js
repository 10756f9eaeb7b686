// Pairs the tablet by the code that the server has printed.

import { button, h } from "./dom.js";
import { send } from "./reach.js";

export function showPairing(main, isPaired) {
  document.title = "Pair this tablet";
  const field = h("input", { id: "code", inputmode: "numeric", autocomplete: "off", maxlength: 12, class: "code", "aria-describedby": "why" });
  const why = h("p", { id: "why", role: "alert" });
  const pair = async code => {
    try {
      await send("/api/pair", { code });
      location.replace("/");
    } catch (failure) {
      why.textContent = failure.message;
      field.select();
    }
  };
  field.addEventListener("keydown", key => key.key === "Enter" && pair(field.value));
  main.replaceChildren(
    h("section", { class: "pairing" },
      h("h1", {}, "Pair this tablet"),
      isPaired && h("p", {}, "It is paired already. ", h("a", { href: "/" }, "To the board")),
      h("p", {}, "Enter the code of eight digits that the server has printed. Each code works once."),
      h("label", { for: "code" }, "Code"), field, why,
      button("Pair", () => pair(field.value), { class: "main" })));
  const given = location.hash.slice(1);
  if (/^\d{8}$/.test(given)) {
    // A code in the address is used up at once, and does not stay there.
    history.replaceState(null, "", "/pair");
    pair(given);
  } else {
    field.focus();
  }
}
