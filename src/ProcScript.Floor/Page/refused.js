// What the server could not write down: whoever told it sees it, and decides what becomes of it. Nothing is lost meanwhile.

import { ask, button, h, sheet } from "./dom.js";
import { leaveOut, refused, tell } from "./queue.js";
import { when } from "./times.js";
import { who } from "./who.js";

const kinds = {
  done: "done", undone: "not done after all", did: "did", reading: "reading", photo: "photo", note: "note", broke: "broke", missing: "missing", found: "found", bag: "bag",
  "hand-over": "handed over", pause: "stopped", resume: "went on", sign: "signed", closed: "closed",
};

const told = event => [event.step && `Step ${event.step}`, event.bag && `Bag ${event.bag}`, kinds[event.kind] ?? event.kind, event.count !== undefined && `${event.count} pieces`, event.verb, event.item, event.tool, event.value, event.to, event.text]
  .filter(Boolean).join(", ");

/** Shows it. */
export async function showRefused() {
  const all = refused();
  const chosen = await sheet("Could not be written down", close => all.length === 0 ? h("p", {}, "Nothing any more.") : h("ul", { class: "story" }, all.map(one => h("li", {},
    h("strong", {}, told(one.event)), h("p", {}, one.refused), h("p", { class: "by" }, `${one.event.by}, ${when(one.event.at)} · ${one.job}`),
    h("div", { class: "choices" }, button("Write it down as a note", () => close({ one, note: true }), { class: "main" }), button("Leave it out", () => close({ one, note: false })))))));
  if (!chosen) {
    return;
  }

  const { one, note } = chosen;
  if (note) {
    const by = await who();
    if (!by) {
      return;
    }

    await tell(one.job, { kind: "note", by, text: `Told by ${one.event.by}, ${one.event.at}, and refused: ${told(one.event)}. ${one.refused}`.slice(0, 4000) });
  } else if (!await ask("Leave it out?", [told(one.event), "It then stands nowhere any more."], "Leave it out", "Keep it")) {
    return;
  }

  await leaveOut(one);
  if (refused().length > 0) {
    await showRefused();
  }
}
