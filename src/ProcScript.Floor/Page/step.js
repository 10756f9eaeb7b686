// A step as it stands on a card.

import { button, h, prose } from "./dom.js";
import { verdict, written } from "./readings.js";
import { told } from "./times.js";

const words = { danger: "Danger", warning: "Warning", caution: "Caution", notice: "Notice" };

/** An alert. */
export const alert = one => h("div", { class: `alert ${one.word}` }, h("strong", {}, words[one.word] ?? one.word), prose(one.html));

/**
 * Shows a step.
 * @param step the step
 * @param at how it stands: done, reading, signed, isNext, photos, isClosed
 * @param act what can be done: tick, other, read, sign, photo
 */
export function showStep(step, at, act) {
  const { done } = at;
  const tick = button(done ? "✓" : "", () => act.tick(step), {
    class: "tick", "data-focus": "tick", "aria-pressed": done ? "true" : "false", "aria-label": `Step ${step.number} done`, disabled: at.isClosed,
  });
  return h("li", { class: `step${done ? " done" : ""}${at.isNext ? " next" : ""}`, id: `step-${step.number}` },
    h("div", { class: "line" },
      tick,
      h("div", { class: "what" },
        at.isNext && h("span", { class: "now" }, "Next"),
        h("p", { class: "text" }, h("span", { class: "number" }, `${step.number}`), " ", step.text),
        step.where && h("p", { class: "where" }, step.where),
        done && h("p", { class: "by" }, doneBy(done))),
      button([h("span", { class: "long" }, "Other"), h("span", { class: "short" }, "⋯")], () => act.other(step), { class: "more", "data-focus": "more", "aria-label": `Step ${step.number}: something other than planned`, disabled: at.isClosed })),
    done ? keepsShowing(step, at, act) : details(step, at, act));
}

function doneBy(done) {
  const also = done.also?.length ? `, told by ${done.also.join(" and ")} too` : "";
  return !done.by ? "Done before these cards were made" : `${done.by}, ${told(done.at, done.logged)}${also}${done.waits ? ", kept here, sent later" : ""}`;
}

function keepsShowing(step, at, act) {
  return [step.reading && !at.reading ? readingField(step, at, act) : at.reading && readingLine(step, at, act), signature(step, at, act)];
}

function details(step, at, act) {
  return h("div", { class: "details" },
    step.alerts.map(alert),
    step.before.length > 0 && h("ul", { class: "before" }, step.before.map(text => h("li", {}, text))),
    (step.torque || step.turn) && h("p", { class: "torque" }, step.torque, step.torque && step.turn ? ". " : "", step.turn),
    step.safe.length > 0 && h("ol", { class: "safe" }, step.safe.map(line => h("li", {}, h("strong", {}, line.action), line.isUsual && h("small", {}, " usual practice, the text says nothing of it"), prose(line.html)))),
    step.how.map(html => prose(html)),
    step.figures.filter(figure => figure.hash).map(figure => h("figure", {},
      h("img", { src: `/api/jobs/${encodeURIComponent(at.job)}/figures/${figure.hash}`, alt: figure.caption, width: figure.width, height: figure.height, loading: "lazy" }),
      h("figcaption", {}, figure.caption))),
    h("dl", { class: "facts" }, [...step.facts,
      ...step.bags.map(bag => ({ sort: step.emptiesBags.includes(bag) ? "Empties bag" : at.phase === "refit" ? "From bag" : "Into bag", text: `${bag}`, bag })),
      ...(step.store ? [{ sort: "Put it", text: step.store }] : [])]
      .map(fact => h("div", {}, h("dt", {}, fact.sort), h("dd", {}, fact.bag ? h("a", { href: `/b/${encodeURIComponent(at.job)}/${fact.bag}`, class: "bag" }, fact.text) : fact.text)))),
    step.ticks.length + step.checks.length > 0 && h("ul", { class: "checks" }, step.ticks.map(text => h("li", {}, text)), step.checks.map(html => h("li", {}, prose(html)))),
    step.reading && (at.reading ? readingLine(step, at, act) : readingField(step, at, act)),
    signature(step, at, act),
    at.notBefore && h("p", { class: "note waits" }, `Not before ${at.notBefore}: what was bonded or sealed has to cure first.`));
}

function readingField(step, at, act) {
  const { reading } = step;
  const said = h("output", { class: "verdict", for: `read-${step.number}` });
  const field = h("input", {
    id: `read-${step.number}`, "data-focus": "read", autocomplete: "off", inputmode: reading.low === undefined && reading.high === undefined ? "text" : "decimal", maxlength: 60, disabled: at.isClosed,
    oninput: () => {
      const now = verdict(field.value, reading);
      said.className = `verdict ${now}`;
      said.textContent = !field.value.trim() ? "" : now === "good" ? reading.limits ? "Right" : "" : now === "out" ? `Out: it must be ${reading.limits}` : "The server compares it";
    },
  });
  return h("div", { class: "reading" },
    h("label", { for: `read-${step.number}` }, `${reading.text}${reading.limits ? ` (${reading.limits})` : ""}`),
    h("div", { class: "field" }, field, reading.unit && h("span", { class: "unit" }, reading.unit),
      button("Write down", () => field.value.trim() ? act.read(step, written(field.value, reading)) : field.focus(), { disabled: at.isClosed, "data-focus": "write" })), said);
}

function readingLine(step, at, act) {
  const { reading } = at;
  const now = reading.verdict || verdict(reading.value, step.reading ?? {});
  return h("p", { class: `read ${now}` },
    h("strong", {}, reading.value), ` ${now === "out" ? `is out: it must be ${step.reading?.limits ?? ""}` : now === "unreadable" ? "cannot be compared: write it down again, with its unit" : ""} `,
    h("span", { class: "by" }, `${reading.by}${reading.waits ? ", kept here, sent later" : ""}`), " ",
    !at.isClosed && button("Read again", () => act.readAgain(step), { class: "plain", "data-focus": "again" }));
}

function signature(step, at, act) {
  return step.signed && (at.signed ? h("p", { class: "by" }, `Signed by ${at.signed}`)
    : h("p", {}, "A second person looks at it and signs. ", button("Sign", () => act.sign(step), { disabled: at.isClosed, "data-focus": "sign" })));
}
