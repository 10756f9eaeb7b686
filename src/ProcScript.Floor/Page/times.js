// Times as people in a workshop read them.

/** Clocks that are further apart than this are told apart, in milliseconds. */
export const apart = 5 * 60 * 1000;

/** A time of today, or with its day. */
export function when(text) {
  const time = new Date(text);
  const today = new Date().toDateString() === time.toDateString();
  const clock = time.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
  return today ? clock : `${time.toLocaleDateString("en-GB", { day: "numeric", month: "short" })}, ${clock}`;
}

/** When something happened; with both clocks where the tablet's and the server's say something else. */
export function told(at, logged) {
  return logged && Math.abs(new Date(logged) - new Date(at)) > apart ? `${when(at)} by the tablet's clock, written down ${when(logged)}` : when(at);
}

/** How long, in words. */
export function length(milliseconds) {
  const minutes = Math.round(Math.abs(milliseconds) / 60000);
  return minutes < 120 ? `${minutes} minutes` : minutes < 2880 ? `${Math.round(minutes / 60)} hours` : `${Math.round(minutes / 1440)} days`;
}
