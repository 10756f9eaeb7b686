// Pairs the tablet by the code that the server has printed.

import { button, h } from "./dom.js";
import { send } from "./reach.js";
import { languageChoice } from "./who.js";
import { phrase } from "./words.js";

export function showPairing(main, isPaired) {
  document.title = phrase("pair.title");
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
      h("h1", {}, phrase("pair.title")),
      isPaired && h("p", {}, `${phrase("pair.already")} `, h("a", { href: "/" }, phrase("pair.to-board"))),
      h("p", {}, phrase("pair.enter")),
      h("label", { for: "code" }, phrase("pair.code")), field, why,
      button(phrase("pair.pair"), () => pair(field.value), { class: "main" }),
      languageChoice()));
  const given = location.hash.slice(1);
  if (/^\d{8}$/.test(given)) {
    // A code in the address is used up at once, and does not stay there.
    history.replaceState(null, "", "/pair");
    pair(given);
  } else {
    field.focus();
  }
}
