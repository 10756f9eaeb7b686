// What somebody has told goes to the tablet's disk first, and from there to the server, in order, until the server has said that it is written
// down. Each has an identity of its own, so that nothing is written twice. What the server refuses stays here until somebody has seen it.

import { all, drop, put } from "./keep.js";
import { Away, call, isReached, onReach, Refused, send } from "./reach.js";

const most = 50;
const again = 4000;
const listeners = new Set();
let waiting = [];
let last = 0;
let sending = null;
let isOutside = false;

/** Tells of every change of the queue; after an answer of the server with the job and how it stands. */
export const onQueue = listener => listeners.add(listener);

/** What of a job is not written down yet, in order. */
export const waitingFor = job => waiting.filter(one => one.job === job && !one.refused);

/** What the server has refused. */
export const refused = () => waiting.filter(one => one.refused);

/** How much is not written down yet. */
export const count = () => waiting.filter(one => !one.refused).length;

/** Whether the tablet has to be paired before anything goes on. */
export const isUnpaired = () => isOutside;

/** Takes up what was kept. */
export async function begin() {
  waiting = (await all("queue")).sort((one, other) => one.key - other.key);
  last = waiting.at(-1)?.key ?? 0;
  onReach(now => now && sendAll());
  addEventListener("online", () => sendAll());
  setInterval(() => count() > 0 && sendAll(), again);
  sendAll();
}

/** Tells something of a job. Once it returns, it cannot be lost. */
export async function tell(job, event, photo = null) {
  last = Math.max(last + 1, Date.now() * 1000);
  const one = { key: last, job, event: { id: crypto.randomUUID(), at: new Date().toISOString(), ...event }, photo };
  await put("queue", one);
  waiting.push(one);
  changed();
  sendAll();
}

/** Leaves out what was refused, once somebody has seen it. */
export async function leaveOut(one) {
  await drop("queue", one.key);
  waiting = waiting.filter(other => other !== one);
  changed();
}

/** Sends what waits. */
export function sendAll() {
  sending ??= (navigator.locks ? navigator.locks.request("floor-queue", sendInOrder) : sendInOrder())
    .catch(failure => { if (!(failure instanceof Away)) { console.error(failure); } })
    .finally(() => { sending = null; });
  return sending;
}

async function sendInOrder() {
  // Another page of this tablet may have sent some of it meanwhile.
  // What is told while that is looked up has not been sent by anybody.
  const before = new Set(waiting.map(one => one.key));
  const kept = new Set((await all("queue")).map(one => one.key));
  waiting = waiting.filter(one => !before.has(one.key) || kept.has(one.key));
  for (let open; (open = waiting.filter(one => !one.refused)).length > 0;) {
    const job = open[0].job;
    const part = [];
    for (const one of open.filter(one => one.job === job).slice(0, most)) {
      await sendPhoto(one);
      if (!one.refused) {
        part.push(one);
      }
    }

    if (part.length > 0) {
      await sendPart(job, part);
    }
  }
}

async function sendPart(job, part) {
  let answer;
  try {
    answer = await send(`/api/jobs/${job}/events`, { events: part.map(one => one.event) });
  } catch (failure) {
    await refusedWhole(part, failure);
    return;
  }

  const taken = new Set();
  for (const one of part) {
    const said = answer.answers.find(other => other.id === one.event.id);
    if (said.refusal) {
      await refuse(one, said.refusal);
    } else {
      await drop("queue", one.key);
      taken.add(one);
    }
  }

  // All at once with how the job stands now: between the two, what is done would look undone.
  waiting = waiting.filter(one => !taken.has(one));
  changed(job, answer.now);
}

async function sendPhoto(one) {
  if (!one.photo || one.event.file) {
    return;
  }

  try {
    const kept = await call(`/api/jobs/${one.job}/photos`, { method: "POST", headers: { "Content-Type": one.photo.type || "application/octet-stream" }, body: one.photo });
    Object.assign(one.event, { file: kept.file, fileHash: kept.fileHash });
    await put("queue", one);
  } catch (failure) {
    await refusedWhole([one], failure);
  }
}

/** Where the server refuses all of a request, each of its events is tried by itself, so that one of them does not hold up the others. */
async function refusedWhole(part, failure) {
  if (!(failure instanceof Refused) || failure.status === 401 || failure.status === 408 || failure.status === 429) {
    isOutside = failure.status === 401;
    changed();
    throw new Away(failure.message);
  }

  if (part.length === 1) {
    await refuse(part[0], failure.message);
    return;
  }

  for (const one of part) {
    await sendPart(one.job, [one]);
  }
}

async function refuse(one, why) {
  one.refused = why;
  await put("queue", one);
  changed();
}

function changed(job = null, now = null) {
  isOutside &&= now === null;
  listeners.forEach(listener => listener(job, now));
}

export { isReached };
