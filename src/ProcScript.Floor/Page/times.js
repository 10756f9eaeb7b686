// Times as people in a workshop read them.

import { phrase, region } from "./words.js";

/** Clocks that are further apart than this are told apart, in milliseconds. */
export const apart = 5 * 60 * 1000;

/** A time of today, or with its day. */
export function when(text) {
  const time = new Date(text);
  const today = new Date().toDateString() === time.toDateString();
  const clock = time.toLocaleTimeString(region, { hour: "2-digit", minute: "2-digit" });
  return today ? clock : `${time.toLocaleDateString(region, { day: "numeric", month: "short" })}, ${clock}`;
}

/** When something happened; with both clocks where the tablet's and the server's say something else. */
export function told(at, logged) {
  return logged && Math.abs(new Date(logged) - new Date(at)) > apart ? phrase("clock.both", { at: when(at), logged: when(logged) }) : when(at);
}

/** How long, in words. */
export function length(milliseconds) {
  const minutes = Math.round(Math.abs(milliseconds) / 60000);
  return minutes < 120 ? phrase("length.minutes", { count: minutes }) : minutes < 2880 ? phrase("length.hours", { count: Math.round(minutes / 60) }) : phrase("length.days", { count: Math.round(minutes / 1440) });
}
