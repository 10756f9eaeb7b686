import type { OriginWords } from './previewPage';
import { type Location, originOf, type StepPlaces } from './stepPlaces';

/** The places that a step comes from, in words: its line, and the `do` lines that brought it into the job. */
export function originsOf(places: StepPlaces, number: number): OriginWords[] {
  const origin = originOf(places, number);
  return origin === undefined
    ? []
    : [
        { text: `Step ${number}: ${lineOf(origin.written)}`, number, call: -1 },
        ...origin.calls.map((place, call) => ({ text: `done at ${lineOf(place)}`, number, call })),
      ];
}

/** A line as people name it. */
function lineOf({ uri, range }: Location): string {
  return `${decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1))} line ${range.start.line + 1}`;
}
