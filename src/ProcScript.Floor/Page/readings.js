// Reads what somebody wrote down, and says at once whether it is right. The server has the last word: it knows all units.

const form = /^([+-]?\d+(?:[.,]\d+)?)\s*(.*)$/;

/** What goes into the journal: with the unit of the limits where none was written. */
export function written(text, reading) {
  const [, number, unit] = text.trim().match(form) ?? [];
  return number === undefined ? text.trim() : `${number.replace(",", ".")}${unit || reading.unit ? ` ${unit || reading.unit}` : ""}`;
}

/** "good", "out", or "" where only the server can tell. */
export function verdict(text, reading) {
  const [, number, unit] = text.trim().match(form) ?? [];
  if (reading.low === undefined && reading.high === undefined) {
    return text.trim() ? "good" : "";
  }

  if (number === undefined || (unit && unit !== reading.unit)) {
    return "";
  }

  const value = Number(number.replace(",", "."));
  const slack = reading.withoutEnds ? 0 : 1e-9 * Math.max(1, Math.abs(value));
  const low = reading.low === undefined || (reading.withoutEnds ? value > reading.low : value >= reading.low - slack);
  const high = reading.high === undefined || (reading.withoutEnds ? value < reading.high : value <= reading.high + slack);
  return low && high ? "good" : "out";
}
