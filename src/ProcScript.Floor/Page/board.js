// The board: all jobs of the shop, live.

import { h, keep } from "./dom.js";
import { showHead } from "./head.js";
import { get, put } from "./keep.js";
import { waitingFor } from "./queue.js";
import { call } from "./reach.js";
import { when } from "./times.js";
import { phrase } from "./words.js";

/** The most jobs that are shown at once: of more, somebody has to say which. */
const mostShown = 200;

/** The most jobs whose lines are asked for by name: of more, all are. */
const mostAsked = 40;

/** Open ones first, and what was worked on last. */
const order = (one, other) => (one.state === "closed") - (other.state === "closed") || Date.parse(other.lastAt) - Date.parse(one.lastAt) || (one.job < other.job ? -1 : 1);

export async function showBoard(main) {
  showHead(phrase("head.jobs"), null, null);
  const find = h("input", { id: "find", type: "search", placeholder: phrase("board.what"), oninput: () => draw() });
  const closed = h("input", { id: "closed", type: "checkbox", onchange: () => { draw(); load(); } });
  const list = h("ul", { class: "board" });
  const none = h("p", {}, phrase("board.none"));
  const more = h("p", {});
  main.replaceChildren(h("div", { class: "find" }, h("label", { for: "find" }, phrase("find")), find, h("label", { class: "check" }, closed, ` ${phrase("board.closed-too")}`)), list, more, none);
  let board = (await get("board", "all"))?.board ?? { jobs: [], unreadable: [] };

  const line = job => {
    const waits = waitingFor(job.job).length;
    return h("li", { class: `job ${job.state}` },
      h("a", { href: `/j/${encodeURIComponent(job.job)}` },
        h("span", { class: "what" }, job.title),
        h("span", { class: "which" }, `${job.machine} · ${job.serial}${job.order ? ` · ${phrase("order", { order: job.order })}` : ""}`),
        h("span", { class: "far" }, h("progress", { max: job.steps, value: job.done, "aria-label": phrase("board.steps-done") }), phrase("of", { done: job.done, all: job.steps })),
        h("span", { class: `state ${job.state}` }, phrase(`state.${job.state}`)),
        h("span", { class: "last" }, job.pausedBy
          ? `${job.to ? phrase("board.handed", { by: job.pausedBy, to: job.to }) : phrase("board.stopped", { by: job.pausedBy })}${job.why ? `: ${job.why}` : ""}`
          : `${job.by}, ${when(job.lastAt)}`),
        job.deviations > 0 && h("span", { class: "other" }, phrase("board.deviations", { count: job.deviations })),
        waits > 0 && h("span", { class: "other" }, phrase("board.waits", { count: waits }))));
  };
  const draw = () => {
    const wanted = find.value.trim().toLowerCase().split(/\s+/);
    const shown = board.jobs.filter(job => (closed.checked || job.state !== "closed")
      && wanted.every(word => `${job.title} ${job.machine} ${job.serial} ${job.order} ${job.job} ${job.by}`.toLowerCase().includes(word)));
    none.hidden = shown.length > 0;
    more.hidden = shown.length <= mostShown;
    more.textContent = phrase("board.more", { count: shown.length - mostShown });
    keep(list, [
      ...shown.slice(0, mostShown).map(job => ({ key: job.job, says: JSON.stringify([job, waitingFor(job.job).length]), make: () => line(job) })),
      ...board.unreadable.map(text => ({ key: `unreadable ${text}`, says: text, make: () => h("li", { class: "note bad" }, text) })),
    ]);
  };
  let asked = null;
  const changed = new Set();
  /** Asks for the lines of the jobs that have changed, or for all. */
  const load = async (jobs = [""]) => {
    const isAll = jobs.includes("") || jobs.length > mostAsked;
    try {
      const now = await call(`/api/jobs?${isAll ? `closed=${closed.checked ? "yes" : "no"}` : jobs.map(job => `job=${encodeURIComponent(job)}`).join("&")}`);
      board = isAll ? now : { ...now, jobs: [...board.jobs.filter(job => !jobs.includes(job.job)), ...now.jobs].sort(order) };
      await put("board", { key: "all", board });
    } catch {
      // What was kept is shown; the line at the top says that there is no network.
    }

    draw();
  };
  draw();
  load();
  return {
    onQueue: draw,
    onChange: job => {
      changed.add(job);
      asked ??= setTimeout(() => {
        asked = null;
        load([...changed]);
        changed.clear();
      }, 300);
    },
  };
}
