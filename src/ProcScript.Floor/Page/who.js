// Who works at this tablet. Asked once; it stands with everything that is told.

import { button, h, sheet } from "./dom.js";
import { choose, languages, pageLanguage, phrase } from "./words.js";

const nameKey = "floor.name";
const namesKey = "floor.names";
const most = 8;

const read = key => { try { return localStorage.getItem(key); } catch { return null; } };
const write = (key, value) => { try { localStorage.setItem(key, value); } catch { /* It is asked again next time. */ } };
let name = read(nameKey) ?? "";

/** The name; empty where nobody has said it. */
export const whoWorks = () => name;

/** The names that were said at this tablet. */
export const knownNames = () => JSON.parse(read(namesKey) ?? "[]");

/** Asks who works here, where nobody has said it; the name, or null where nobody says. */
export async function who() {
  return name || change();
}

/** Asks who works here. */
export async function change() {
  const said = await askName(phrase("head.who"), phrase("who.stands"), phrase("who.that-is-me"), languageChoice());
  if (said) {
    name = said;
    write(nameKey, name);
    write(namesKey, JSON.stringify([name, ...knownNames().filter(other => other !== name)].slice(0, most)));
  }

  return said;
}

/** Asks for a name. */
export function askName(title, text, label, more = null) {
  return sheet(title, close => {
    const field = h("input", { id: "name", autocomplete: "off", maxlength: 60, enterkeyhint: "done" });
    const done = () => field.value.trim() ? close(field.value.trim()) : field.focus();
    field.addEventListener("keydown", key => key.key === "Enter" && done());
    return [
      h("p", {}, text),
      h("div", { class: "choices" }, ...knownNames().map(known => button(known, () => close(known)))),
      h("label", { for: "name" }, phrase("name")), field,
      h("div", { class: "choices" }, button(label, done, { class: "main" })),
      more,
    ];
  });
}

/** Chooses the language of this tablet. */
export const languageChoice = () => h("p", { class: "languages" }, Object.entries(languages).filter(([tag]) => tag !== pageLanguage).map(([tag, name]) => button(name, () => choose(tag), { lang: tag, class: "plain" })));
