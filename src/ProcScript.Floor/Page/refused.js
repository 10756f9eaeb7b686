// What the server could not write down: whoever told it sees it, and decides what becomes of it. Nothing is lost meanwhile.

import { ask, button, h, sheet } from "./dom.js";
import { leaveOut, refused, tell } from "./queue.js";
import { when } from "./times.js";
import { who } from "./who.js";
import { phrase } from "./words.js";

const told = event => [phrase(`kind.${event.kind}`), event.step && phrase("step", { number: event.step }), event.bag && phrase("bag", { number: event.bag }), event.count !== undefined && phrase("pieces", { count: event.count }), event.verb, event.item, event.tool, event.value, event.to, event.text]
  .filter(Boolean).join(", ");

/** Shows it. */
export async function showRefused() {
  const all = refused();
  const chosen = await sheet(phrase("refused.title"), close => all.length === 0 ? h("p", {}, phrase("refused.none")) : h("ul", { class: "story" }, all.map(one => h("li", {},
    h("strong", {}, told(one.event)), h("p", {}, one.refused), h("p", { class: "by" }, `${one.event.by}, ${when(one.event.at)} · ${one.job}`),
    h("div", { class: "choices" }, button(phrase("refused.as-note"), () => close({ one, note: true }), { class: "main" }), button(phrase("refused.leave-out"), () => close({ one, note: false })))))));
  if (!chosen) {
    return;
  }

  const { one, note } = chosen;
  if (note) {
    const by = await who();
    if (!by) {
      return;
    }

    await tell(one.job, { kind: "note", by, text: phrase("refused.note", { by: one.event.by, at: one.event.at, what: told(one.event), why: one.refused }).slice(0, 4000) });
  } else if (!await ask(phrase("refused.leave-out-sure"), [told(one.event), phrase("refused.nowhere")], phrase("refused.leave-out"), phrase("refused.keep"))) {
    return;
  }

  await leaveOut(one);
  if (refused().length > 0) {
    await showRefused();
  }
}
