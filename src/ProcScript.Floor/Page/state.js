// A job as the tablet knows it: what the server has said last, and on top what was told here and is not written down yet.

import { get, put } from "./keep.js";
import { waitingFor } from "./queue.js";
import { call, Refused } from "./reach.js";
import { verdict } from "./readings.js";

/** The form of the cards that this page knows: what an earlier one has kept is asked for anew. */
const form = 2;

/** A job, kept on the tablet and brought up to date. */
export class Job {
  constructor(name) {
    this.name = name;
    this.page = null;
    this.fault = null;
  }

  /** Takes up what is kept, and asks the server. */
  async begin() {
    const kept = (await get("pages", this.name))?.page;
    this.page = kept?.cards.form === form ? kept : null;
    if (this.page) {
      this.#index();
    }

    await this.load();
  }

  /** Asks the server for how it stands; for all, where its cards are others. */
  async load() {
    try {
      const now = this.page ? await call(`/api/jobs/${encodeURIComponent(this.name)}/now`) : null;
      if (now && now.plan === this.page.cards.revision) {
        await this.stands(now);
      } else {
        const page = await call(`/api/jobs/${encodeURIComponent(this.name)}`);
        this.page = page;
        this.#index();
        await put("pages", { key: this.name, page });
        this.#warm();
      }

      this.fault = null;
    } catch (failure) {
      this.fault = failure instanceof Refused ? failure.message : null;
    }
  }

  /** Takes up how it stands; an answer that was overtaken by a newer one is let go. */
  async stands(now) {
    if (!this.page || now.events < this.page.now.events) {
      return;
    }

    if (now.plan !== this.page.cards.revision) {
      await this.load();
      return;
    }

    this.page = { ...this.page, now };
    await put("pages", { key: this.name, page: this.page });
  }

  /** The step of a number. */
  step(number) {
    return this.steps.get(number);
  }

  /** How it stands with what was told here. */
  view() {
    const { now, cards } = this.page;
    const done = new Map(now.done.map(one => [one.step, { ...one, waits: false }]));
    const readings = new Map(now.readings.map(one => [one.step, one]));
    const signed = new Map(now.signed.map(one => [one.step, one.by]));
    const energies = new Map(now.energies.map(one => [one.name, { ...one, waits: false }]));
    const told = [...now.told];
    const waiting = waitingFor(this.name);
    let { paused, closed } = now;
    for (const { event, photo } of waiting) {
      const here = (event.plan ?? cards.revision) === cards.revision;
      if (event.kind === "done" && here && !done.has(event.step)) {
        done.set(event.step, { step: event.step, by: event.by, at: event.at, count: event.count ?? 0, also: [], waits: true });
        this.step(event.step)?.turns.forEach(turn => energies.has(turn.energy) && Object.assign(energies.get(turn.energy), { state: this.#proved(turn, event.step, readings), waits: true }));
      } else if (event.kind === "undone" && here) {
        done.delete(event.step);
      } else if (event.kind === "reading" && here) {
        readings.set(event.step, { step: event.step, value: event.value, verdict: "", by: event.by, at: event.at, waits: true });
        if (done.has(event.step)) {
          this.step(event.step)?.turns.forEach(turn => energies.has(turn.energy) && Object.assign(energies.get(turn.energy), { state: this.#proved(turn, event.step, readings), waits: true }));
        }

      } else if (event.kind === "sign") {
        signed.set(event.step, event.by);
      } else if (event.kind === "pause" || event.kind === "hand-over") {
        paused = event;
      } else if (event.kind === "resume") {
        paused = null;
      } else if (event.kind === "closed") {
        closed = event;
      }

      if (!["done", "undone", "reading", "sign", "closed"].includes(event.kind)) {
        told.push({ ...event, waits: true, photo });
      }
    }

    // Without an answer of the server the order of the cards says what is next.
    const next = waiting.length === 0 ? new Set(now.next.map(one => one.number)) : this.#next(done);
    return { ...now, done, readings, signed, energies, told, paused, closed, next, waits: waiting.length };
  }

  /** That an energy is off is proved by its reading alone. */
  #proved(turn, step, readings) {
    const { reading } = this.step(step);
    const read = readings.get(step);
    return turn.state === "isolated" && reading && (!read || (read.verdict || verdict(read.value, reading)) !== "good") ? "unproved" : turn.state;
  }

  #next(done) {
    const left = [...this.steps.values()].filter(step => !done.has(step.number));
    const isStripped = !left.some(step => step.phase !== "refit");
    return new Set(left.filter(step => (isStripped || step.phase !== "refit") && step.earlier.every(number => done.has(number))).slice(0, 12).map(step => step.number));
  }

  #index() {
    this.steps = new Map(this.page.cards.cards.flatMap(card => card.steps.map(step => [step.number, Object.assign(step, { phase: card.phase })])));
  }

  /** Has the worker keep the pictures of the cards. */
  #warm() {
    for (const step of this.steps.values()) {
      step.figures.filter(figure => figure.hash).forEach(figure => fetch(`/api/jobs/${encodeURIComponent(this.name)}/figures/${figure.hash}`).catch(() => {}));
    }
  }
}
