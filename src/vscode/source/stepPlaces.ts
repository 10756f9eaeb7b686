/** A place in a text, counted from 0. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

/** A stretch of a text. */
export interface Location {
  readonly uri: string;
  readonly range: { readonly start: Position; readonly end: Position };
}

/** Where a step comes from. */
export interface StepPlace {
  readonly number: number;
  /** Where it was written; of a derived one, the line that it follows from. */
  readonly written: Location;
  /** The `do` lines that brought it into the job, outermost first. */
  readonly calls: readonly Location[];
}

/** A stretch of text with the steps that are printed from it; none for the head of the procedure, which is on the cover. */
export interface Stretch extends Location {
  readonly steps: readonly number[];
}

/** Where the steps of a job come from, and what the texts come to: as the server writes it. */
export interface StepPlaces {
  readonly steps: readonly StepPlace[];
  readonly stretches: readonly Stretch[];
}

/** A change of a text as the editor tells it. */
export interface Change {
  readonly range: { readonly start: Position; readonly end: Position };
  readonly text: string;
}

/** The same places with every address as the editor writes it. */
export function addressed(places: StepPlaces, addressOf: (uri: string) => string): StepPlaces {
  const known = new Map<string, string>();
  const own = <T extends Location>(place: T): T => {
    const uri = known.get(place.uri) ?? addressOf(place.uri);
    known.set(place.uri, uri);
    return { ...place, uri };
  };
  return {
    steps: places.steps.map((step) => ({ ...step, written: own(step.written), calls: step.calls.map(own) })),
    stretches: places.stretches.map(own),
  };
}

/** The innermost stretch at a place; on a line where none holds the place itself, the shortest that touches the line. */
export function stretchAt(places: StepPlaces, uri: string, at: Position): Stretch | undefined {
  const onLine = places.stretches.filter((one) => one.uri === uri && one.range.start.line <= at.line && at.line <= one.range.end.line);
  const inside = onLine.filter(({ range }) => !isBefore(at, range.start) && !isBefore(range.end, at));
  const height = ({ range }: Stretch) => range.end.line - range.start.line;
  const least = Math.min(...onLine.map(height));
  const deepest = inside.at(-1);
  // Outer stretches stand before those within them.
  return deepest !== undefined && height(deepest) === least ? deepest : onLine.find((one) => height(one) === least);
}

/** Whether a text has anything that is printed on the cards. */
export function isSource(places: StepPlaces, uri: string): boolean {
  return places.stretches.some((one) => one.uri === uri);
}

/** Where a step comes from. */
export function originOf(places: StepPlaces, number: number): StepPlace | undefined {
  return places.steps.find((step) => step.number === number);
}

/** The places after changes of a text that the server has not answered yet: what lies behind a change moves along. */
export function moved(places: StepPlaces, uri: string, changes: readonly Change[]): StepPlaces {
  // The editor tells changes from the end of the text on; each is told in the text as it was before all of them.
  const inOrder = [...changes].sort((one, other) => (isBefore(one.range.start, other.range.start) ? 1 : -1));
  const shifted = (line: number) => inOrder.reduce(lineAfter, line);
  const place = <T extends Location>(one: T): T =>
    one.uri === uri
      ? {
          ...one,
          range: {
            start: { ...one.range.start, line: shifted(one.range.start.line) },
            end: { ...one.range.end, line: shifted(one.range.end.line) },
          },
        }
      : one;
  return {
    steps: places.steps.map((step) => ({ ...step, written: place(step.written), calls: step.calls.map(place) })),
    stretches: places.stretches.map(place),
  };
}

/** The line that a line has become. */
function lineAfter(line: number, { range: { start, end }, text }: Change): number {
  const more = text.split('\n').length - 1 - (end.line - start.line);
  if (
    line > end.line ||
    (line === end.line && (end.character === 0 || start.line === end.line) && isBefore(start, { line, character: 1 }))
  ) {
    return line + more;
  }
  return Math.min(line, start.line);
}

function isBefore(one: Position, other: Position): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
