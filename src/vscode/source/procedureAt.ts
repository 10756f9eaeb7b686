const heading = /^\s*procedure\s+([\p{L}\p{Nl}\p{No}_][\p{L}\p{Nl}\p{No}_0-9]*)/u;

/** The name of the procedure that begins at a line. */
export function nameAt(lines: readonly string[], line: number): string | undefined {
  return heading.exec(lines[line] ?? '')?.[1];
}

/** The number of the line that begins the procedure around a line, or the first procedure after it; nothing where there is none. */
export function procedureAt(lines: readonly string[], line: number): number | undefined {
  for (let above = Math.min(line, lines.length - 1); above >= 0; above--) {
    if (heading.test(lines[above] ?? '')) {
      return above;
    }
  }
  const below = lines.findIndex((text) => heading.test(text));
  return below < 0 ? undefined : below;
}
