// The page of a job: the cards, step by step, and always in sight what is live and what is not safe.

import { ask, button, h, keep, say } from "./dom.js";
import { showHead, showName } from "./head.js";
import { closeJob, otherThanPlanned, showBags, stopJob } from "./sheets.js";
import { tell } from "./queue.js";
import { Away, send } from "./reach.js";
import { Job } from "./state.js";
import { alert, asksFor, showStep } from "./step.js";
import { apart, length, told, when } from "./times.js";
import { askName, who } from "./who.js";
import { phrase } from "./words.js";

export async function showJob(main, foot, name) {
  const job = new Job(name);
  showHead(phrase("head.job"), null, { href: "/", label: phrase("head.board") });
  await job.begin();
  const parts = Object.fromEntries(["state", "notes", "cards", "story"].map(id => [id, h("div", { id: `job-${id}` })]));
  main.replaceChildren(...Object.values(parts));
  const open = new Map();
  const again = new Set();
  let drawn = "";

  const telling = async (event, photo = null) => {
    const by = event.by ?? await who();
    if (!by) {
      return false;
    }

    showName();
    const needsPlan = event.step !== undefined || event.bag !== undefined;
    await tell(name, { ...event, by, ...(needsPlan ? { plan: job.page.cards.revision } : {}) }, photo);
    return true;
  };

  const act = {
    async tick(step) {
      const view = job.view();
      if (view.done.has(step.number)) {
        if (await ask(phrase("step.title", { number: step.number }), [phrase("tick.ticked"), step.text], phrase("tick.not-done"), phrase("tick.done"))) {
          await telling({ kind: "undone", step: step.number });
        }

        return;
      }

      if (view.paused && !await ask(phrase("tick.stands"), [pausedBy(view.paused)], phrase("tick.go-on"), phrase("tick.leave"))) {
        return;
      }

      if (view.paused && !await telling({ kind: "resume" })) {
        return;
      }

      const before = step.earlier.filter(number => !view.done.has(number));
      if (!view.next.has(step.number) && !await ask(phrase("tick.not-next", { number: step.number }),
        [before.length ? phrase(before.length > 6 ? "tick.before-more" : "tick.before", { steps: before.slice(0, 6).map(number => phrase("step", { number })).join(", ") }) : phrase("tick.machine-not"),
          phrase("tick.as-it-was")], phrase("tick.all-the-same"), phrase("tick.was-not"))) {
        return;
      }

      if (step.reading && !view.readings.has(step.number) && !await ask(phrase("tick.has-reading", { number: step.number }), [phrase("tick.nothing-yet", { reading: asksFor(step.reading) }), step.turns.some(turn => turn.state === "isolated") && phrase("tick.nothing-proved")].filter(Boolean), phrase("tick.reading-later"), phrase("tick.read-first"))) {
        document.getElementById(`read-${step.number}`)?.focus();
        return;
      }

      if (await telling({ kind: "done", step: step.number })) {
        scrollToNext();
        say(phrase("tick.is-done", { number: step.number }), phrase("undo"), () => telling({ kind: "undone", step: step.number }));
      }
    },
    async other(step) {
      await otherThanPlanned(job, step, telling);
    },
    async read(step, value) {
      if (await telling({ kind: "reading", step: step.number, value })) {
        again.delete(step.number);
        say(phrase("read.written", { value }));
        draw();
      }
    },
    readAgain(step) {
      again.add(step.number);
      draw();
      document.getElementById(`read-${step.number}`)?.focus();
    },
    async sign(step) {
      const by = await askName(phrase("sign.title", { number: step.number }), phrase("sign.looked", { step: step.text }), phrase("sign.i"));
      if (by && by === job.view().done.get(step.number)?.by) {
        say(phrase("sign.second"));
      } else if (by) {
        await telling({ kind: "sign", step: step.number, by });
      }
    },
  };

  function draw() {
    if (!job.page) {
      parts.notes.replaceChildren(h("p", { class: "note bad" }, job.fault ?? phrase("never-opened")));
      return;
    }

    const { cards } = job.page;
    const view = job.view();
    if (drawn !== cards.revision) {
      drawn = cards.revision;
      showHead(cards.title, `${cards.machine} · ${cards.serial}${cards.order ? ` · ${phrase("order", { order: cards.order })}` : ""}`, { href: "/", label: phrase("head.board") });
      parts.cards.lang = cards.language;
    }

    drawState(parts.state, view);
    // What stays in sight above is left free when a step is brought into sight.
    document.documentElement.style.setProperty("--state", `${Math.min(parts.state.offsetHeight, innerHeight / 3)}px`);
    drawNotes(parts.notes, job, view, telling);
    drawCards(view);
    drawStory(parts.story, job, view);
    drawFoot(view);
  }

  function drawCards(view) {
    const first = [...view.next][0];
    keep(parts.cards, job.page.cards.cards.map((card, place) => {
      const numbers = card.steps.map(step => step.number);
      const done = numbers.filter(number => view.done.has(number)).length;
      const lacks = card.steps.filter(step => view.done.get(step.number)?.by && ((step.reading && !view.readings.has(step.number)) || (step.signed && !view.signed.has(step.number)))).length;
      const isOpen = open.get(place) ?? (numbers.includes(first) || (first === undefined && done < numbers.length));
      const shown = card.steps.map(step => ({ step, at: standing(step, card, view) }));
      return {
        key: `card-${place}`,
        // Steps are kept one by one, so that a card is made once.
        says: `${card.title}`,
        make: () => h("details", { class: "card" }, h("summary", {}, h("span", { class: "name" }), h("span", { class: "far" })), h("ol", {})),
        fill(element) {
          const [name, far] = element.firstChild.children;
          name.replaceChildren(h("span", { class: `phase ${card.phase}` }, phrase(`phase.${card.phase}`)), h("h2", {}, card.title));
          far.textContent = lacks > 0 ? phrase("card.lacks", { done, all: numbers.length, lacks }) : phrase("of", { done, all: numbers.length });
          element.classList.toggle("whole", done === numbers.length && lacks === 0);
          element.open = isOpen;
          element.firstChild.onclick = () => open.set(place, !element.open);
          if (isOpen || element.lastChild.childElementCount > 0) {
            keep(element.lastChild, shown.map(({ step, at }) => ({ key: `${step.number}`, says: JSON.stringify(at), make: () => showStep(step, at, act) })));
          } else {
            element.ontoggle = () => element.open && keep(element.lastChild, shown.map(({ step, at }) => ({ key: `${step.number}`, says: JSON.stringify(at), make: () => showStep(step, at, act) })));
          }
        },
      };
    }));
  }

  function standing(step, card, view) {
    const soon = job.page.now.next.find(one => one.number === step.number)?.notBefore;
    return {
      job: name, phase: card.phase, done: view.done.get(step.number) ?? null, reading: again.has(step.number) ? null : view.readings.get(step.number) ?? null, signed: view.signed.get(step.number) ?? null,
      isNext: view.next.has(step.number) && !view.closed, isClosed: Boolean(view.closed), notBefore: soon && new Date(soon) > Date.now() ? when(soon) : null,
    };
  }

  function drawFoot(view) {
    foot.hidden = false;
    const isClosed = Boolean(view.closed);
    keep(foot, [
      { key: "next", says: "next", make: () => button(phrase("foot.next"), scrollToNext) },
      { key: "other", says: `${isClosed}`, make: () => button(isClosed ? phrase("note") : phrase("foot.other"), () => otherThanPlanned(job, null, telling, isClosed)) },
      { key: "bags", says: "bags", make: () => button(phrase("foot.bags"), () => showBags(job)) },
      { key: "stop", says: `${isClosed} ${Boolean(view.paused)}`, make: () => button(view.paused ? phrase("foot.go-on") : phrase("foot.stop"), () => view.paused ? telling({ kind: "resume" }) : stopJob(telling), { disabled: isClosed }) },
      { key: "close", says: `${isClosed}`, make: () => button(isClosed ? phrase("foot.closed") : phrase("foot.close"), () => closeJob(job, telling), { disabled: isClosed }) },
    ]);
  }

  const scrollToNext = () => {
    const view = job.view();
    const [first] = view.next;
    open.clear();
    if (first !== undefined && !view.closed) {
      scrollTo(first);
    } else if (!view.closed && view.done.size === job.steps.size) {
      say(phrase("foot.every-step", { close: phrase("foot.close") }));
    }
  };

  /** Brings a step into sight, and its card open. */
  function scrollTo(number) {
    const place = job.page.cards.cards.findIndex(card => card.steps.some(step => step.number === number));
    if (place >= 0) {
      open.set(place, true);
      draw();
      const step = document.getElementById(`step-${number}`);
      step.scrollIntoView({ block: "start" });
      step.querySelector(".tick").focus({ preventScroll: true });
    }
  }

  let asked = null;
  draw();
  const wanted = location.hash.match(/^#step-(\d+)$/);
  if (wanted && job.page) {
    scrollTo(Number(wanted[1]));
  }

  return {
    async onQueue(of, now) {
      if (of === name && now) {
        await job.stands(now);
      }

      draw();
    },
    onChange(of) {
      if (of === "" || of === name) {
        asked ??= setTimeout(async () => { asked = null; await job.load(); draw(); }, 300);
      }
    },
  };
}

const pausedBy = paused => paused.to
  ? `${phrase("paused.handed", { by: paused.by, to: paused.to })}${paused.text ? `: ${paused.text}` : "."}`
  : `${phrase("paused.stopped", { by: paused.by, when: told(paused.at, paused.logged) })}${paused.text ? `: ${paused.text}` : "."}`;

async function makeCards(job) {
  const by = await who();
  if (!by) {
    return;
  }

  try {
    await send(`/api/jobs/${encodeURIComponent(job.name)}/refit`, { by });
    say(phrase("cards.made"));
  } catch (failure) {
    say(failure instanceof Away ? phrase("cards.need-network") : failure.message);
  }
}

function drawState(parent, view) {
  keep(parent, [
    {
      key: "energies", says: JSON.stringify([...view.energies.values()]),
      make: () => h("ul", { class: "energies", "aria-label": phrase("energy.all") }, [...view.energies.values()].map(energy =>
        h("li", { class: energy.state }, h("span", {}, energy.title), h("strong", {}, phrase(`energy.${energy.state}`)), energy.waits && h("small", {}, phrase("energy.as-told"))))),
    },
    ...(view.unsafe.length + view.hidden.length > 0 ? [{
      key: "unsafe", says: JSON.stringify([view.unsafe, view.hidden]),
      make: () => h("div", { class: "unsafe", role: "alert" },
        view.unsafe.length > 0 && [h("h2", {}, phrase("unsafe.now")), h("ul", {}, view.unsafe.map(text => h("li", {}, text)))],
        view.hidden.length > 0 && [h("h2", {}, phrase("unsafe.hidden")), h("ul", {}, view.hidden.map(text => h("li", {}, text)))]),
    }] : []),
  ]);
}

function drawNotes(parent, job, view, telling) {
  const { cards } = job.page;
  const off = Date.now() - new Date(view.time);
  const notes = [
    job.fault && { key: "fault", text: [job.fault], sort: "bad" },
    view.closed && { key: "closed", text: [`${phrase("closed.by", { by: view.closed.by, when: told(view.closed.at, view.closed.logged) })}${view.closed.text ? `: ${view.closed.text}` : "."}`], sort: "good" },
    view.paused && { key: "paused", text: [pausedBy(view.paused)], sort: "waits", label: phrase("foot.go-on"), act: () => telling({ kind: "resume" }) },
    view.needsNewCards && { key: "cards", text: [phrase("cards.left")], sort: "bad", label: phrase("cards.make"), act: () => makeCards(job) },
    view.unfollowed && { key: "unfollowed", text: [view.unfollowed], sort: "bad" },
    Math.abs(off) > apart && job.fault === null && view.waits === 0 && { key: "clock", text: [phrase(off < 0 ? "clock.behind" : "clock.ahead", { length: length(off) })], sort: "waits" },
  ].filter(Boolean);
  keep(parent, [
    ...notes.map(note => ({ key: note.key, says: note.text.join(), make: () => h("p", { class: `note ${note.sort}` }, note.text, " ", note.label && button(note.label, note.act)) })),
    {
      key: "job", says: cards.revision,
      make: () => h("details", { class: "about" }, h("summary", {}, phrase("about.title")),
        cards.licensed.length > 0 && h("p", { class: "alert warning" }, h("strong", {}, phrase("word.warning")), ` ${phrase("about.licensed", { works: cards.licensed.join(", ") })}`),
        cards.hazards.map(hazard => h("div", { class: "alert warning" }, h("strong", {}, hazard.title), h("p", {}, hazard.caution), h("p", { class: "by" }, hazard.items.join(", ")))),
        cards.alerts.map(alert),
        cards.ppe.length > 0 && h("p", {}, phrase("about.wear", { items: cards.ppe.join(", ") })),
        cards.energies.map(energy => h("p", {}, h("strong", {}, energy.title), energy.limits ? `: ${phrase("about.off-is", { limits: energy.limits })}` : ""))),
    },
  ]);
}

function drawStory(parent, job, view) {
  const photo = one => one.photo ? h("p", { class: "by" }, phrase("story.photo-here")) : one.file && h("img", { src: `/api/jobs/${encodeURIComponent(job.name)}/${one.file}`, alt: one.text || phrase("photo"), loading: "lazy", class: "shot" });
  const what = one => [one.step && phrase("step", { number: one.step }), one.bag && phrase("bag", { number: one.bag }), one.tool, one.verb, one.count === undefined ? title(job, one.item) : one.item ? `${one.count} × ${title(job, one.item).replace(/^\d+ × /, "")}` : one.bag ? phrase("pieces", { count: one.count }) : `${one.count} ×`, one.to && phrase("story.to", { to: one.to }), one.text].filter(Boolean).join(" · ");
  keep(parent, [
    ...(view.deviations.length > 0 ? [{
      key: "deviations", says: JSON.stringify(view.deviations),
      make: () => h("section", {}, h("h2", {}, phrase("story.deviations")), h("ul", { class: "story" }, view.deviations.map(one =>
        h("li", {}, h("strong", {}, one.text), one.means.length > 0 && h("ul", {}, one.means.map(text => h("li", {}, text))), h("p", { class: "by" }, `${one.by}, ${when(one.at)}`))))),
    }] : []),
    ...(view.told.length > 0 ? [{
      key: "told", says: JSON.stringify(view.told),
      make: () => h("section", {}, h("h2", {}, phrase("story.told")), h("ul", { class: "story" }, [...view.told].reverse().map(one =>
        h("li", {}, h("strong", {}, phrase(`kind.${one.kind}`)), ` ${what(one)}`, photo(one), h("p", { class: "by" }, `${one.by}, ${told(one.at, one.logged)}${one.waits ? `, ${phrase("kept-here")}` : ""}`))))),
    }] : []),
  ]);
}

const title = (job, item) => item && (job.page.cards.items.find(one => one.name === item)?.title ?? item);
