/** What the extension reads of a plan, as the program publishes it. */
export interface Plan {
  readonly job: string;
  readonly title: string;
  readonly strip: readonly Card[];
  readonly work: Card | null;
  readonly refit: readonly Card[];
}

/** A card: the steps of one stage. */
export interface Card {
  readonly title: string;
  readonly steps: readonly Step[];
}

/** A step, and the place in the library that it comes from. */
export interface Step {
  readonly number: number;
  readonly text: string;
  readonly torque: string;
  readonly because: string;
  readonly source: { readonly path: string; readonly line: number; readonly column: number };
}

/** Every step in the order of the pack. */
export function stepsOf(plan: Plan): Step[] {
  return [...plan.strip, ...(plan.work === null ? [] : [plan.work]), ...plan.refit].flatMap((card) => card.steps);
}

/**
 * The first of some steps that was written at a line, or else at the nearest line above it.
 * @param file the file's address on the disk; the steps' paths begin at the library's root.
 */
export function stepAt(steps: readonly Step[], file: string, line: number): Step | undefined {
  let best: Step | undefined;
  for (const step of steps) {
    if (liesIn(file, step.source.path) && step.source.line <= line && step.source.line > (best?.source.line ?? 0)) {
      best = step;
    }
  }
  return best;
}

/**
 * The library's root, found by a file whose place in the library some step tells.
 * @param file the address on the disk of a file that steps come from.
 */
export function rootOf(steps: readonly Step[], file: string): string | undefined {
  const path = steps.find((step) => liesIn(file, step.source.path))?.source.path;
  return path === undefined ? undefined : file.slice(0, -path.length - 1);
}

function liesIn(file: string, path: string): boolean {
  return file.endsWith(`/${path}`);
}
