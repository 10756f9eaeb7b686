// What is told beside the ticks: other than planned, bags, stopping, closing.

import { ask, button, h, say, sheet } from "./dom.js";
import { isReached } from "./reach.js";
import { askName } from "./who.js";
import { phrase } from "./words.js";

const longestText = 4000;

/** A number of pieces, with large buttons for less and more. */
export function counter(value, least = 0) {
  const field = h("input", { id: "count", inputmode: "numeric", value: `${value}`, maxlength: 6 });
  const move = by => { field.value = `${Math.max(least, (Number.parseInt(field.value, 10) || 0) + by)}`; };
  const element = h("div", { class: "counter" }, h("label", { for: "count" }, phrase("count.how-many")),
    button("−", () => move(-1), { "aria-label": phrase("count.less") }), field, button("+", () => move(1), { "aria-label": phrase("count.more") }));
  return { element, value: () => Math.max(least, Number.parseInt(field.value, 10) || 0) };
}

const words = (label, id = "text") => {
  const field = h("textarea", { id, rows: 3, maxlength: longestText });
  return { element: h("div", {}, h("label", { for: id }, label), field), field, value: () => field.value.trim() };
};

/** Something other than planned: at a step, or anywhere on the machine. */
export async function otherThanPlanned(job, step, telling, isClosed = false) {
  const at = step ? { step: step.number } : {};
  const what = await sheet(step ? phrase("other.at-step", { number: step.number }) : isClosed ? phrase("other.note") : phrase("foot.other"), close => [
    step && h("p", {}, step.text),
    h("div", { class: "choices tall" },
      ...[
        step?.count > 0 && ["count", phrase("other.count"), phrase("other.count-how")],
        !isClosed && ["broke", phrase("other.broke"), phrase("other.broke-how")],
        !isClosed && ["missing", phrase("other.missing"), phrase("other.missing-how")],
        !isClosed && ["tool", phrase("other.tool"), phrase("other.tool-how")],
        !isClosed && ["found", phrase("other.found"), phrase("other.found-how")],
        !isClosed && !step && ["did", phrase("other.did"), phrase("other.did-how")],
        ["note", phrase("note"), phrase("other.note-how")],
        !isClosed && ["photo", phrase("photo"), phrase("other.photo-how")],
      ].filter(Boolean).map(([key, label, under]) => button(h("span", {}, h("strong", {}, label), h("small", {}, under)), () => close(key)))),
  ]);
  const sheets = { count: countSheet, broke: piecesSheet, missing: piecesSheet, found: piecesSheet, tool: toolSheet, did: didSheet, note: noteSheet, photo: photoSheet };
  const event = what && await sheets[what](job, step, what);
  if (event && await telling({ ...at, ...event.event }, event.photo)) {
    say(phrase("told"));
  }
}

const countSheet = (job, step) => sheet(phrase("count.title", { number: step.number }), close => {
  const count = counter(step.count);
  return [h("p", {}, step.text), h("p", {}, phrase("count.step-says", { count: step.count })), count.element,
    h("div", { class: "choices" }, button(phrase("count.done"), () => close({ event: { kind: "done", count: count.value() } }), { class: "main" }))];
});

async function piecesSheet(job, step, kind) {
  const [title, label] = [phrase(`what.${kind}`), phrase(`it.${kind}`)];
  const item = step?.item ? job.page.cards.items.find(one => one.name === step.item) ?? null : await pickItem(job, title, kind !== "missing");
  return item && sheet(title, close => {
    const count = counter(1, 1);
    const text = words(phrase(item.name ? "words.may-be-empty" : "words.what-is-it"));
    const bag = kind === "missing" && h("select", { id: "bag" }, h("option", { value: "" }, phrase("missing.not-there")), job.page.cards.bags.map(one => h("option", { value: one.number }, phrase("missing.from-bag", { number: one.number }))));
    const done = () => !item.name && !text.value() ? text.field.focus() : close({
      event: { kind, ...(item.name ? { item: item.name } : {}), ...(item.name && item.count === 0 ? {} : { count: count.value() }), ...(text.value() ? { text: text.value() } : {}), ...(bag && bag.value ? { bag: Number(bag.value) } : {}) },
    });
    return [item.name && h("p", {}, h("strong", {}, item.title)), !(item.name && item.count === 0) && count.element, bag && h("div", {}, h("label", { for: "bag" }, phrase("missing.where")), bag), text.element,
      h("div", { class: "choices" }, button(label, done, { class: "main" }))];
  });
}

/** Picks an item of the machine; one without a name is none of them. */
const pickItem = (job, title, hasOther) => sheet(title, close => {
  const list = h("div", { class: "choices tall items" });
  const find = h("input", { id: "find-item", type: "search", autocomplete: "off", oninput: () => draw() });
  const draw = () => {
    const wanted = find.value.trim().toLowerCase().split(/\s+/);
    list.replaceChildren(...job.page.cards.items.filter(item => wanted.every(word => `${item.title} ${item.name}`.toLowerCase().includes(word))).map(item => button(item.title, () => close(item))));
  };
  draw();
  return [h("label", { for: "find-item" }, phrase("find")), find, hasOther && button(phrase("pick.other"), () => close({ name: "", title: "", count: 1, verbs: [], positions: [] })), list];
});

async function didSheet(job) {
  const item = await pickItem(job, phrase("did.to-what"), false);
  return item && sheet(item.title, close => {
    const count = item.count > 0 ? counter(item.count, 1) : null;
    const position = item.positions.length > 0 && h("select", { id: "position" }, item.positions.map(one => h("option", {}, one)));
    return [count?.element, position && h("div", {}, h("label", { for: "position" }, phrase("did.stands-at")), position), h("h3", {}, phrase("did.what")),
      h("div", { class: "choices" }, item.verbs.map(verb => button(verb.replaceAll("_", " "), () => close({
        event: { kind: "did", verb, item: item.name, ...(count ? { count: count.value() } : {}), ...(position ? { position: position.value } : {}) },
      }))))];
  });
}

const toolSheet = () => sheet(phrase("tool.which"), close => {
  const tool = h("input", { id: "tool", maxlength: 200, autocomplete: "off" });
  const done = () => tool.value.trim() ? close({ event: { kind: "missing", tool: tool.value.trim() } }) : tool.focus();
  return [h("div", {}, h("label", { for: "tool" }, phrase("tool.name")), tool), h("div", { class: "choices" }, button(phrase("tool.is-missing"), done, { class: "main" }))];
});

const noteSheet = () => sheet(phrase("note"), close => {
  const text = words(phrase("other.note-how"));
  return [text.element, h("div", { class: "choices" }, button(phrase("write-down"), () => text.value() ? close({ event: { kind: "note", text: text.value() } }) : text.field.focus(), { class: "main" }))];
});

const largePhoto = 1 << 20;
const longestSide = 2400;

/** A photo of a size that is quickly sent and shows all that matters; where the browser cannot read it, the photo as it is. */
async function smaller(photo) {
  if (photo.size < largePhoto) {
    return photo;
  }

  try {
    const picture = await createImageBitmap(photo, { imageOrientation: "from-image" });
    const scale = Math.min(1, longestSide / Math.max(picture.width, picture.height));
    const canvas = h("canvas", { width: Math.round(picture.width * scale), height: Math.round(picture.height * scale) });
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    const made = await new Promise(resolve => canvas.toBlob(resolve, "image/jpeg", 0.85));
    return made && made.size < photo.size ? made : photo;
  } catch {
    return photo;
  }
}

const photoSheet = () => sheet(phrase("photo"), close => {
  const file = h("input", { id: "photo", type: "file", accept: "image/*", capture: "environment", onchange: () => { shown.hidden = !file.files[0]; shown.src = file.files[0] ? URL.createObjectURL(file.files[0]) : ""; } });
  const shown = h("img", { alt: phrase("photo.the"), class: "shot", hidden: true });
  const text = words(phrase("words.what-it-shows"));
  return [h("label", { for: "photo" }, phrase("photo.take")), file, shown, text.element,
    h("div", { class: "choices" }, button(phrase("photo.keep"), async () => file.files[0] ? close({ event: { kind: "photo", ...(text.value() ? { text: text.value() } : {}) }, photo: await smaller(file.files[0]) }) : file.focus(), { class: "main" }))];
});

/** The bags of the job. */
export function showBags(job) {
  const { cards, now } = job.page;
  return sheet(phrase("foot.bags"), close => [
    cards.bags.length === 0 && h("p", {}, phrase("bags.none")),
    h("ul", { class: "bags" }, cards.bags.map(bag => {
      const here = now.bags.find(one => one.number === bag.number);
      return h("li", {}, h("a", { href: `/b/${encodeURIComponent(job.name)}/${bag.number}` },
        h("strong", {}, bag.name ? phrase("bag.named", { number: bag.number, name: bag.name }) : phrase("bag.title", { number: bag.number })), h("span", {}, here ? phrase("bags.holds", { count: here.count }) : phrase("bags.empty")), h("small", {}, `${bag.stage}${here?.where ? ` · ${phrase("bags.lies", { where: here.where })}` : ""}`)));
    })),
    h("div", { class: "choices" }, button(phrase("bags.back"), () => close(null))),
  ]);
}

/** Stops the work, or hands it over. */
export async function stopJob(telling) {
  const what = await sheet(phrase("foot.stop"), close => [h("div", { class: "choices tall" },
    button(h("span", {}, h("strong", {}, phrase("stop.stops")), h("small", {}, phrase("stop.stops-why"))), () => close("pause")),
    button(h("span", {}, h("strong", {}, phrase("stop.other")), h("small", {}, phrase("stop.other-how"))), () => close("hand-over")))]);
  const to = what === "hand-over" ? await askName(phrase("stop.who"), phrase("stop.until"), phrase("stop.hand-to-them")) : "";
  if (!what || to === null) {
    return;
  }

  const text = await sheet(what === "pause" ? phrase("stop.why") : phrase("stop.has-to-know", { to }), close => {
    const said = words(phrase("words.in-words"));
    return [said.element, h("div", { class: "choices" }, button(phrase(what === "pause" ? "stop.stop" : "stop.hand-over"), () => close({ text: said.value() }), { class: "main" }))];
  });
  if (text) {
    await telling({ kind: what, ...(to ? { to } : {}), ...(text.text ? { text: text.text } : {}) });
  }
}

/** Closes the job; with a reason where something is open. */
export async function closeJob(job, telling) {
  if (!isReached() || job.view().waits > 0) {
    await ask(phrase("close.not-yet"), phrase("close.needs-server"), phrase("back"), phrase("bags.back"));
    return;
  }

  await job.load();
  const open = job.page.now.beforeClosing;
  const fluids = job.page.now.fluids.filter(one => one.verdict);
  const closing = await sheet(phrase("foot.close"), close => {
    const why = words(phrase("close.why"));
    const done = () => open.length > 0 && !why.value() ? why.field.focus() : close({ text: why.value() });
    return [
      fluids.map(one => h("p", {}, h("strong", {}, one.title), `: ${one.verdict}`)),
      open.length === 0 ? h("p", {}, phrase("close.whole"))
        : [h("h3", {}, phrase("close.open", { count: open.length })), h("ul", { class: "open" }, open.map(text => h("li", {}, text))), why.element],
      h("div", { class: "choices" }, button(phrase(open.length === 0 ? "foot.close" : "close.all-the-same"), done, { class: open.length === 0 ? "main" : "bad" })),
    ];
  });
  if (closing && await telling({ kind: "closed", ...(closing.text ? { text: closing.text } : {}), ...(open.length > 0 ? { despite: open } : {}) })) {
    say(phrase("close.is-closed"));
  }
}
