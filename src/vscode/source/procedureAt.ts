const heading = /^\s*procedure\s+([\p{L}\p{Nl}\p{No}_][\p{L}\p{Nl}\p{No}_0-9]*)/u;

/** The name of the procedure that begins at a line. */
export function nameAt(lines: readonly string[], line: number): string | undefined {
  return heading.exec(lines[line] ?? '')?.[1];
}

/** The number of the line at which a procedure begins; nothing where there is none of that name. */
export function headingOf(lines: readonly string[], name: string): number | undefined {
  const line = lines.findIndex((_, at) => nameAt(lines, at) === name);
  return line < 0 ? undefined : line;
}

/** The number of the line that begins the procedure whose braces a line lies in. */
export function procedureAround(lines: readonly string[], line: number): number | undefined {
  for (let above = Math.min(line, lines.length - 1); above >= 0; above--) {
    if (nameAt(lines, above) !== undefined) {
      return ends(lines, above) < line ? undefined : above;
    }
  }
  return undefined;
}

/** The number of the line that begins the procedure around a line, or the nearest before or else after it; nothing where there is none. */
export function procedureAt(lines: readonly string[], line: number): number | undefined {
  for (let above = Math.min(line, lines.length - 1); above >= 0; above--) {
    if (nameAt(lines, above) !== undefined) {
      return above;
    }
  }
  const below = lines.findIndex((_, at) => nameAt(lines, at) !== undefined);
  return below < 0 ? undefined : below;
}

/** The line on which the braces that open at a heading are closed; beyond the text while one is missing. */
function ends(lines: readonly string[], begin: number): number {
  let depth = 0;
  for (let line = begin; line < lines.length; line++) {
    for (const brace of (lines[line] ?? '').replaceAll(/"(?:[^"\\]|\\.)*"|\/\/.*$/g, '').match(/[{}]/g) ?? []) {
      depth += brace === '{' ? 1 : -1;
      if (depth === 0) {
        return line;
      }
    }
  }
  return Number.POSITIVE_INFINITY;
}
