// Finds out from the address what is shown, and shows it: the board, a job, a bag, or how to be paired.

import { showBag } from "./bag.js";
import { showBoard } from "./board.js";
import { h } from "./dom.js";
import { showJob } from "./job.js";
import { isLasting } from "./keep.js";
import { showPairing } from "./pair.js";
import { begin, count, isUnpaired, onQueue, refused } from "./queue.js";
import { call, isReached, listen, onReach } from "./reach.js";
import { showRefused } from "./refused.js";
import { pageLanguage, phrase } from "./words.js";

const main = document.getElementById("main");
const foot = document.getElementById("foot");

const place = location.pathname.split("/").filter(Boolean).map(decodeURIComponent);
const shows = place[0] === "j" && place.length === 2 ? "job" : place[0] === "b" && place.length === 3 ? "bag" : place[0] === "pair" ? "pair" : "board";

async function start() {
  document.documentElement.lang = pageLanguage;
  foot.setAttribute("aria-label", phrase("foot.actions"));
  if ("serviceWorker" in navigator && isSecureContext) {
    navigator.serviceWorker.register("/worker.js").catch(failure => console.warn(`This page does not open without a network: ${failure.message}`));
  }

  navigator.storage?.persist?.();
  const paired = await call("/api/me").then(me => me.paired, () => true);
  if (!paired || shows === "pair") {
    showPairing(main, paired);
    return;
  }

  await begin();
  const view = await (shows === "job" ? showJob(main, foot, place[1]) : shows === "bag" ? showBag(main, place[1], Number(place[2])) : showBoard(main));
  addEventListener("headshown", showReach);
  onReach(() => showReach());
  onQueue((job, now) => { showReach(); view.onQueue(job, now); });
  onReach(now => now && view.onChange(""));
  listen(job => view.onChange(job));
  setInterval(() => !document.hidden && !isReached() && view.onChange(""), 10000);
  showReach();
}

/** Whether the server is reached, and what waits for it. */
function showReach() {
  const reach = document.getElementById("reach");
  if (!reach) {
    return;
  }

  const waits = count();
  const wrong = refused().length;
  reach.className = isUnpaired() ? "bad" : isReached() && waits === 0 ? "good" : "waits";
  reach.textContent = isUnpaired() ? phrase("reach.unpaired")
    : !isReached() ? waits > 0 ? phrase("reach.away-waits", { count: waits }) : phrase("reach.away")
    : waits > 0 ? phrase("reach.sending", { count: waits }) : phrase("reach.all");
  const notes = document.getElementById("notes");
  notes?.replaceChildren(...[
    isUnpaired() && h("p", { class: "note bad" }, `${phrase("reach.pair-again")} `, h("a", { href: "/pair" }, phrase("reach.enter-code"))),
    wrong > 0 && h("p", { class: "note bad" }, `${phrase("reach.refused", { count: wrong })} `, h("button", { type: "button", onclick: showRefused }, phrase("reach.look"))),
    !isLasting() && h("p", { class: "note bad" }, phrase("reach.keeps-nothing")),
  ].filter(Boolean));
}

start();
