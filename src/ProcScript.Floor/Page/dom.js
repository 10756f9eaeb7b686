// Makes elements. Texts are always texts; prose alone is markup, which the server has made and in which nothing of an author is.

import { phrase } from "./words.js";

/** An element with its attributes, listeners (onclick and the like) and children; what is null, undefined or false is left out. */
export function h(tag, attributes, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes ?? {})) {
    if (value === null || value === undefined || value === false) {
      continue;
    }

    if (name.startsWith("on")) {
      element.addEventListener(name.slice(2), value);
    } else {
      element.setAttribute(name, value === true ? "" : value);
    }
  }

  element.append(...children.flat(Infinity).filter(child => child !== null && child !== undefined && child !== false));
  return element;
}

/** Prose that the server has made. */
export function prose(html, className = "prose") {
  const element = h("div", { class: className });
  element.innerHTML = html;
  return element;
}

/** A button as large as a glove needs it. */
export function button(label, onclick, attributes = {}) {
  return h("button", { type: "button", onclick, ...attributes }, label);
}

/**
 * Brings a list of keyed elements up to date. What says the same as before stays as it is, and so does whatever somebody is typing into.
 * @param parent the list
 * @param items {key, says, make, fill} each; says is everything that make shows, and fill, where there is one, brings up to date what it does not
 */
export function keep(parent, items) {
  const there = new Map([...parent.children].map(child => [child.dataset.key, child]));
  let before = null;
  for (const { key, says, make, fill } of items) {
    let element = there.get(key);
    there.delete(key);
    if (!element || (element.dataset.says !== says && !isTypedInto(element))) {
      const held = element?.contains(document.activeElement) ? document.activeElement.dataset.focus : null;
      const fresh = make();
      fresh.dataset.key = key;
      fresh.dataset.says = says;
      element?.replaceWith(fresh);
      element = fresh;
      if (held) {
        fresh.querySelector(`[data-focus="${held}"]`)?.focus({ preventScroll: true });
      }
    }

    const place = before ? before.nextSibling : parent.firstChild;
    if (place !== element) {
      parent.insertBefore(element, place);
    }

    fill?.(element);
    before = element;
  }

  there.forEach(element => element.remove());
}

function isTypedInto(element) {
  const active = document.activeElement;
  return element.contains(active) && active.matches("input:not([type=file]), textarea") && active.value !== "";
}

let quiet;

/** Says something for a moment, and to who cannot see it; with a button where it can be taken back. */
export function say(text, label = null, action = null) {
  const said = document.getElementById("said");
  clearTimeout(quiet);
  said.replaceChildren(text, ...(label ? [button(label, () => { said.replaceChildren(); action(); })] : []));
  quiet = setTimeout(() => said.replaceChildren(), label ? 10000 : 6000);
}

/** A sheet over the page. It returns what it was closed with; null where it was left. */
export function sheet(title, fill) {
  return new Promise(resolve => {
    const close = value => { dialog.returned = value; dialog.close(); };
    const body = h("div", { class: "body" });
    const dialog = h("dialog", { "aria-labelledby": "sheet-title" },
      h("div", { class: "top" }, h("h2", { id: "sheet-title" }, title), button(phrase("back"), () => close(null), { class: "plain" })), body);
    dialog.addEventListener("close", () => { dialog.remove(); resolve(dialog.returned ?? null); });
    body.append(...[fill(close)].flat(Infinity).filter(Boolean));
    document.body.append(dialog);
    dialog.showModal();
  });
}

/** Asks; yes and no are said in words. */
export const ask = (title, text, yes, no) => sheet(title, close => [
  ...[text].flat().map(line => h("p", {}, line)),
  h("div", { class: "choices" }, button(yes, () => close(true), { class: "main" }), button(no, () => close(false))),
]);
