// A step as it stands on a card.

import { button, h, prose } from "./dom.js";
import { verdict, written } from "./readings.js";
import { told } from "./times.js";
import { list, phrase } from "./words.js";

/** What is to be read at a step. */
export const asksFor = reading => reading.text || phrase("reading.proves-off");

/** An alert. */
export const alert = one => h("div", { class: `alert ${one.word}` }, h("strong", {}, phrase(`word.${one.word}`)), prose(one.html));

/**
 * Shows a step.
 * @param step the step
 * @param at how it stands: done, reading, signed, isNext, photos, isClosed
 * @param act what can be done: tick, other, read, sign, photo
 */
export function showStep(step, at, act) {
  const { done } = at;
  const tick = button(done ? "✓" : "", () => act.tick(step), {
    class: "tick", "data-focus": "tick", "aria-pressed": done ? "true" : "false", "aria-label": phrase("step.done-label", { number: step.number }), disabled: at.isClosed,
  });
  return h("li", { class: `step${done ? " done" : ""}${at.isNext ? " next" : ""}`, id: `step-${step.number}` },
    h("div", { class: "line" },
      tick,
      h("div", { class: "what" },
        at.isNext && h("span", { class: "now" }, phrase("step.next")),
        h("p", { class: "text" }, h("span", { class: "number" }, `${step.number}`), " ", step.text),
        step.where && h("p", { class: "where" }, step.where),
        done && h("p", { class: "by" }, doneBy(done))),
      button([h("span", { class: "long" }, phrase("step.other")), h("span", { class: "short" }, "⋯")], () => act.other(step), { class: "more", "data-focus": "more", "aria-label": phrase("step.other-label", { number: step.number }), disabled: at.isClosed })),
    done ? keepsShowing(step, at, act) : details(step, at, act));
}

function doneBy(done) {
  const also = done.also?.length ? `, ${phrase("step.told-too", { names: list(done.also) })}` : "";
  return !done.by ? phrase("step.before-cards") : `${done.by}, ${told(done.at, done.logged)}${also}${done.waits ? `, ${phrase("kept-here")}` : ""}`;
}

function keepsShowing(step, at, act) {
  return [step.reading && !at.reading ? readingField(step, at, act) : at.reading && readingLine(step, at, act), signature(step, at, act)];
}

function details(step, at, act) {
  return h("div", { class: "details" },
    step.alerts.map(alert),
    step.before.length > 0 && h("ul", { class: "before" }, step.before.map(one => h("li", {}, phrase(`step.${one.sort}`, { what: one.text })))),
    (step.torque || step.turn) && h("p", { class: "torque" }, step.torque, step.torque && step.turn ? ". " : "", step.turn),
    step.safe.length > 0 && h("ol", { class: "safe" }, step.safe.map(line => h("li", {}, h("strong", {}, line.action), line.isUsual && h("small", {}, ` ${phrase("step.usual")}`), prose(line.html)))),
    step.how.map(html => prose(html)),
    step.figures.filter(figure => figure.hash).map(figure => h("figure", {},
      h("img", { src: `/api/jobs/${encodeURIComponent(at.job)}/figures/${figure.hash}`, alt: figure.caption, width: figure.width, height: figure.height, loading: "lazy" }),
      h("figcaption", {}, figure.caption))),
    h("dl", { class: "facts" }, [...step.facts,
      ...step.bags.map(bag => ({ sort: step.emptiesBags.includes(bag) ? "empties-bag" : at.phase === "refit" ? "from-bag" : "into-bag", text: `${bag}`, bag })),
      ...(step.store ? [{ sort: "put-it", text: step.store }] : [])]
      .map(fact => h("div", {}, h("dt", {}, phrase(`fact.${fact.sort}`)), h("dd", {}, fact.bag ? h("a", { href: `/b/${encodeURIComponent(at.job)}/${fact.bag}`, class: "bag" }, fact.text) : fact.text)))),
    step.ticks.length + step.lineUp.length + step.checks.length > 0 && h("ul", { class: "checks" }, [...step.ticks, ...step.lineUp.map(what => phrase("step.line-up", { what }))].map(text => h("li", {}, text)), step.checks.map(html => h("li", {}, prose(html)))),
    step.reading && (at.reading ? readingLine(step, at, act) : readingField(step, at, act)),
    signature(step, at, act),
    at.notBefore && h("p", { class: "note waits" }, phrase("step.cures", { when: at.notBefore })));
}

function readingField(step, at, act) {
  const { reading } = step;
  const said = h("output", { class: "verdict", for: `read-${step.number}` });
  const field = h("input", {
    id: `read-${step.number}`, "data-focus": "read", autocomplete: "off", inputmode: reading.low === undefined && reading.high === undefined ? "text" : "decimal", maxlength: 60, disabled: at.isClosed,
    oninput: () => {
      const now = verdict(field.value, reading);
      said.className = `verdict ${now}`;
      said.textContent = !field.value.trim() ? "" : now === "good" ? reading.limits ? phrase("reading.right") : "" : now === "out" ? phrase("reading.out", { limits: reading.limits }) : phrase("reading.server-compares");
    },
  });
  return h("div", { class: "reading" },
    h("label", { for: `read-${step.number}` }, `${asksFor(reading)}${reading.limits ? ` (${reading.limits})` : ""}`),
    h("div", { class: "field" }, field, reading.unit && h("span", { class: "unit" }, reading.unit),
      button(phrase("write-down"), () => field.value.trim() ? act.read(step, written(field.value, reading)) : field.focus(), { disabled: at.isClosed, "data-focus": "write" })), said);
}

function readingLine(step, at, act) {
  const { reading } = at;
  const now = reading.verdict || verdict(reading.value, step.reading ?? {});
  return h("p", { class: `read ${now}` },
    h("strong", {}, reading.value), ` ${now === "out" ? phrase("reading.is-out", { limits: step.reading?.limits ?? "" }) : now === "unreadable" ? phrase("reading.unreadable") : ""} `,
    h("span", { class: "by" }, `${reading.by}${reading.waits ? `, ${phrase("kept-here")}` : ""}`), " ",
    !at.isClosed && button(phrase("reading.again"), () => act.readAgain(step), { class: "plain", "data-focus": "again" }));
}

function signature(step, at, act) {
  return step.signed && (at.signed ? h("p", { class: "by" }, phrase("sign.by", { by: at.signed }))
    : h("p", {}, `${phrase("sign.asked")} `, button(phrase("sign"), () => act.sign(step), { disabled: at.isClosed, "data-focus": "sign" })));
}
