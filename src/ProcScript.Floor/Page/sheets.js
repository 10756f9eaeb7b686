// What is told beside the ticks: other than planned, bags, stopping, closing.

import { ask, button, h, say, sheet } from "./dom.js";
import { isReached } from "./reach.js";
import { askName } from "./who.js";

const longestText = 4000;

/** A number of pieces, with large buttons for less and more. */
export function counter(value, least = 0) {
  const field = h("input", { id: "count", inputmode: "numeric", value: `${value}`, maxlength: 6 });
  const move = by => { field.value = `${Math.max(least, (Number.parseInt(field.value, 10) || 0) + by)}`; };
  const element = h("div", { class: "counter" }, h("label", { for: "count" }, "How many pieces"),
    button("−", () => move(-1), { "aria-label": "One less" }), field, button("+", () => move(1), { "aria-label": "One more" }));
  return { element, value: () => Math.max(least, Number.parseInt(field.value, 10) || 0) };
}

const words = (label, id = "text") => {
  const field = h("textarea", { id, rows: 3, maxlength: longestText });
  return { element: h("div", {}, h("label", { for: id }, label), field), field, value: () => field.value.trim() };
};

/** Something other than planned: at a step, or anywhere on the machine. */
export async function otherThanPlanned(job, step, telling, isClosed = false) {
  const at = step ? { step: step.number } : {};
  const what = await sheet(step ? `Step ${step.number}: other than planned` : isClosed ? "A note" : "Other than planned", close => [
    step && h("p", {}, step.text),
    h("div", { class: "choices tall" },
      ...[
        step?.count > 0 && ["count", "Another number of pieces", "More or fewer moved than the step says"],
        !isClosed && ["broke", "Something broke", "A clip, a bolt, a part"],
        !isClosed && ["missing", "Something is missing", "Was not there, or is lost"],
        !isClosed && ["tool", "A tool is missing", "One that the cards do not name"],
        !isClosed && ["found", "A piece too many", "More came off, or one is left over"],
        !isClosed && !step && ["did", "Did what no step says", "Took off, opened or moved something else"],
        ["note", "Note", "What the next one has to know"],
        !isClosed && ["photo", "Photo", "From the camera"],
      ].filter(Boolean).map(([key, label, under]) => button(h("span", {}, h("strong", {}, label), h("small", {}, under)), () => close(key)))),
  ]);
  const sheets = { count: countSheet, broke: piecesSheet, missing: piecesSheet, found: piecesSheet, tool: toolSheet, did: didSheet, note: noteSheet, photo: photoSheet };
  const event = what && await sheets[what](job, step, what);
  if (event && await telling({ ...at, ...event.event }, event.photo)) {
    say("Told.");
  }
}

const countSheet = (job, step) => sheet(`Step ${step.number}: another number`, close => {
  const count = counter(step.count);
  return [h("p", {}, step.text), h("p", {}, `The step says ${step.count}. Tell how many it was: the step counts as done with that many.`), count.element,
    h("div", { class: "choices" }, button("Done with that many", () => close({ event: { kind: "done", count: count.value() } }), { class: "main" }))];
});

const questions = {
  broke: ["What broke?", "It broke"],
  missing: ["What is missing?", "It is missing"],
  found: ["What is too many?", "It is there"],
};

async function piecesSheet(job, step, kind) {
  const [title, label] = questions[kind];
  const item = step?.item ? job.page.cards.items.find(one => one.name === step.item) ?? null : await pickItem(job, title, kind !== "missing");
  return item && sheet(title, close => {
    const count = counter(1, 1);
    const text = words(item.name ? "Words (may stay empty)" : "What is it?");
    const bag = kind === "missing" && h("select", { id: "bag" }, h("option", { value: "" }, "was not on the machine"), job.page.cards.bags.map(one => h("option", { value: one.number }, `from bag ${one.number}`)));
    const done = () => !item.name && !text.value() ? text.field.focus() : close({
      event: { kind, ...(item.name ? { item: item.name } : {}), ...(item.name && item.count === 0 ? {} : { count: count.value() }), ...(text.value() ? { text: text.value() } : {}), ...(bag && bag.value ? { bag: Number(bag.value) } : {}) },
    });
    return [item.name && h("p", {}, h("strong", {}, item.title)), !(item.name && item.count === 0) && count.element, bag && h("div", {}, h("label", { for: "bag" }, "Where from"), bag), text.element,
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
  return [h("label", { for: "find-item" }, "Find"), find, hasOther && button("Something else", () => close({ name: "", title: "", count: 1, verbs: [], positions: [] })), list];
});

async function didSheet(job) {
  const item = await pickItem(job, "To what was it done?", false);
  return item && sheet(item.title, close => {
    const count = item.count > 0 ? counter(item.count, 1) : null;
    const position = item.positions.length > 0 && h("select", { id: "position" }, item.positions.map(one => h("option", {}, one)));
    return [count?.element, position && h("div", {}, h("label", { for: "position" }, "It stands at"), position), h("h3", {}, "What was done"),
      h("div", { class: "choices" }, item.verbs.map(verb => button(verb.replaceAll("_", " "), () => close({
        event: { kind: "did", verb, item: item.name, ...(count ? { count: count.value() } : {}), ...(position ? { position: position.value } : {}) },
      }))))];
  });
}

const toolSheet = () => sheet("Which tool is missing?", close => {
  const tool = h("input", { id: "tool", maxlength: 200, autocomplete: "off" });
  const done = () => tool.value.trim() ? close({ event: { kind: "missing", tool: tool.value.trim() } }) : tool.focus();
  return [h("div", {}, h("label", { for: "tool" }, "Its name, or what it is"), tool), h("div", { class: "choices" }, button("It is missing", done, { class: "main" }))];
});

const noteSheet = () => sheet("Note", close => {
  const text = words("What the next one has to know");
  return [text.element, h("div", { class: "choices" }, button("Write down", () => text.value() ? close({ event: { kind: "note", text: text.value() } }) : text.field.focus(), { class: "main" }))];
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

const photoSheet = () => sheet("Photo", close => {
  const file = h("input", { id: "photo", type: "file", accept: "image/*", capture: "environment", onchange: () => { shown.hidden = !file.files[0]; shown.src = file.files[0] ? URL.createObjectURL(file.files[0]) : ""; } });
  const shown = h("img", { alt: "The photo", class: "shot", hidden: true });
  const text = words("What it shows (may stay empty)");
  return [h("label", { for: "photo" }, "Take a photo"), file, shown, text.element,
    h("div", { class: "choices" }, button("Keep the photo", async () => file.files[0] ? close({ event: { kind: "photo", ...(text.value() ? { text: text.value() } : {}) }, photo: await smaller(file.files[0]) }) : file.focus(), { class: "main" }))];
});

/** The bags of the job. */
export function showBags(job) {
  const { cards, now } = job.page;
  return sheet("Bags", close => [
    cards.bags.length === 0 && h("p", {}, "This job fills no bag."),
    h("ul", { class: "bags" }, cards.bags.map(bag => {
      const here = now.bags.find(one => one.number === bag.number);
      return h("li", {}, h("a", { href: `/b/${encodeURIComponent(job.name)}/${bag.number}` },
        h("strong", {}, `Bag ${bag.number}${bag.name ? `, ${bag.name}` : ""}`), h("span", {}, here ? `holds ${here.count}` : "empty"), h("small", {}, `${bag.stage}${here?.where ? ` · lies ${here.where}` : ""}`)));
    })),
    h("div", { class: "choices" }, button("Back to the cards", () => close(null))),
  ]);
}

/** Stops the work, or hands it over. */
export async function stopJob(telling) {
  const what = await sheet("Stop or hand over", close => [h("div", { class: "choices tall" },
    button(h("span", {}, h("strong", {}, "The work stops"), h("small", {}, "A break, a part that has to come")), () => close("pause")),
    button(h("span", {}, h("strong", {}, "Somebody else goes on"), h("small", {}, "Hand over, with what they have to know")), () => close("hand-over")))]);
  const to = what === "hand-over" ? await askName("Who goes on?", "The job stands until they say that they go on with it.", "Hand over to them") : "";
  if (!what || to === null) {
    return;
  }

  const text = await sheet(what === "pause" ? "Why does it stop?" : `What does ${to} have to know?`, close => {
    const said = words("In words (may stay empty)");
    return [said.element, h("div", { class: "choices" }, button(what === "pause" ? "Stop" : "Hand over", () => close({ text: said.value() }), { class: "main" }))];
  });
  if (text) {
    await telling({ kind: what, ...(to ? { to } : {}), ...(text.text ? { text: text.text } : {}) });
  }
}

/** Closes the job; with a reason where something is open. */
export async function closeJob(job, telling) {
  if (!isReached() || job.view().waits > 0) {
    await ask("Not yet", "A job is closed where the server is reached and all is written down: only then is it sure that nothing is open.", "Back", "Back to the cards");
    return;
  }

  await job.load();
  const open = job.page.now.beforeClosing;
  const fluids = job.page.now.fluids.filter(one => one.verdict);
  const closing = await sheet("Close the job", close => {
    const why = words("Why is it closed all the same?");
    const done = () => open.length > 0 && !why.value() ? why.field.focus() : close({ text: why.value() });
    return [
      fluids.map(one => h("p", {}, h("strong", {}, one.title), `: ${one.verdict}`)),
      open.length === 0 ? h("p", {}, "The machine is whole, the bags are empty, and every reading is right.")
        : [h("h3", {}, `${open.length} ${open.length === 1 ? "thing is" : "things are"} not as they have to be`), h("ul", { class: "open" }, open.map(text => h("li", {}, text))), why.element],
      h("div", { class: "choices" }, button(open.length === 0 ? "Close the job" : "Close it all the same", done, { class: open.length === 0 ? "main" : "bad" })),
    ];
  });
  if (closing && await telling({ kind: "closed", ...(closing.text ? { text: closing.text } : {}), ...(open.length > 0 ? { despite: open } : {}) })) {
    say("The job is closed.");
  }
}
