// How the server is reached, and whether it is.

import { phrase } from "./words.js";

const listeners = new Set();
let reached = navigator.onLine;

/** Whether the server answered the last time. */
export const isReached = () => reached;

/** Tells when the server is reached again, or no more. */
export const onReach = listener => listeners.add(listener);

function note(now) {
  if (reached !== now) {
    reached = now;
    listeners.forEach(listener => listener(now));
  }
}

/** The server has refused; the message is for whoever holds the tablet. */
export class Refused extends Error {
  constructor(status, message) {
    super(message);
    this.status = status;
  }
}

/** The server is not reached. */
export class Away extends Error {
}

const patience = 15000;

/** Asks the server. Throws Refused or Away. */
export async function call(path, options = {}) {
  let response;
  try {
    response = await fetch(path, { signal: AbortSignal.timeout(options.body instanceof Blob ? 8 * patience : patience), ...options });
  } catch (failure) {
    note(false);
    throw new Away(failure.message);
  }

  if (response.status >= 500) {
    note(false);
    throw new Away((await response.json().catch(() => ({}))).detail ?? phrase("reach.fault"));
  }

  note(true);
  if (!response.ok) {
    const problem = await response.json().catch(() => ({}));
    throw new Refused(response.status, problem.detail ?? phrase("reach.refuses", { status: response.status }));
  }

  return response.json();
}

/** Sends JSON. */
export const send = (path, body) => call(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });

/** Listens to what changes; an empty name is everything. */
export function listen(onChange) {
  const stream = new EventSource("/api/stream");
  stream.onopen = () => note(true);
  stream.onerror = () => { note(false); if (stream.readyState === EventSource.CLOSED) { setTimeout(() => listen(onChange), 5000); } };
  stream.onmessage = message => onChange(JSON.parse(message.data).job);
}
