// The words of the page, in the language that was chosen at this tablet, or else in the browser's. They are messages as the cards' are: ICU
// MessageFormat, a file for each language. What authors have written and what the server says of a job stand as they are.

const languageKey = "floor.language";

/** The languages, each by its own name. */
export const languages = { en: "English", de: "Deutsch", fr: "Français", es: "Español", pl: "Polski" };

/** How dates and times are written. */
const regions = { en: "en-GB" };

const chosen = () => { try { return localStorage.getItem(languageKey); } catch { return null; } };
const language = [chosen(), ...navigator.languages.map(tag => tag.slice(0, 2))].find(tag => tag in languages) ?? "en";
const messages = await (await fetch(`/page/words-${language}.json`)).json();
const plurals = new Intl.PluralRules(language);
const read = new Map();

/** The language of the page. */
export const pageLanguage = language;

/** The tag by which dates and times are written. */
export const region = regions[language] ?? language;

/** Takes another language for this tablet; the page begins anew in it. */
export function choose(tag) {
  try {
    localStorage.setItem(languageKey, tag);
  } catch {
    // It is asked again next time.
  }

  location.reload();
}

/** What the page says, with its values filled in. */
export function phrase(key, values = {}) {
  if (!(key in messages)) {
    throw new Error(`There is no message '${key}'.`);
  }

  if (!read.has(key)) {
    read.set(key, parts(messages[key], 0, false).parts);
  }

  return write(read.get(key), values, null);
}

/** Several things, one after the other. */
export const list = things => new Intl.ListFormat(region, { type: "conjunction" }).format(things);

function write(all, values, counted) {
  return all.map(part => {
    if (typeof part === "string") {
      return part;
    }

    if (part.name === "#") {
      return counted;
    }

    const value = values[part.name];
    if (value === undefined) {
      throw new Error(`The message needs '${part.name}'.`);
    }

    return part.ways ? write(part.ways[`=${value}`] ?? part.ways[plurals.select(value)] ?? part.ways.other, values, value) : value;
  }).join("");
}

/** Reads a message from a place to its end, or to the brace that ends a way of a plural. */
function parts(text, from, isWay) {
  const made = [];
  let at = from;
  let plain = "";
  while (at < text.length && !(isWay && text[at] === "}")) {
    if (text[at] === "{") {
      const end = text.slice(at).search(/[,}]/) + at;
      made.push(plain);
      plain = "";
      const name = text.slice(at + 1, end).trim();
      if (text[end] === "}") {
        made.push({ name });
        at = end + 1;
      } else {
        const plural = ways(text, text.indexOf(",", end + 1) + 1);
        made.push({ name, ways: plural.ways });
        at = plural.end;
      }
    } else if (isWay && text[at] === "#") {
      made.push(plain, { name: "#" });
      plain = "";
      at++;
    } else {
      plain += text[at++];
    }
  }

  made.push(plain);
  return { parts: made.filter(part => part !== ""), end: at };
}

/** Reads the ways of a plural, to behind the brace that ends it. */
function ways(text, from) {
  const all = {};
  let at = from;
  for (;;) {
    const open = text.indexOf("{", at);
    const close = text.indexOf("}", at);
    if (open < 0 || close < open) {
      return { ways: all, end: close + 1 };
    }

    const way = parts(text, open + 1, true);
    all[text.slice(at, open).trim()] = way.parts;
    at = way.end + 1;
  }
}
