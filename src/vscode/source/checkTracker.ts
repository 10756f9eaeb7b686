/** Keeps account of which texts the server has yet to judge. Knows nothing of the editor, so that it can be tested alone. */
export class CheckTracker {
  private readonly waiting = new Map<string, { version: number; since: number }>();
  private readonly judged = new Map<string, number>();

  /** A version of a text is shown, and until it is judged somebody waits for it. */
  expect(uri: string, version: number, now: number): void {
    if (this.judged.get(uri) !== version) {
      this.waiting.set(uri, { version, since: this.waiting.get(uri)?.since ?? now });
    }
  }

  /** The server has judged a version of a text. A judgement of an older version than the one shown settles nothing. */
  answered(uri: string, version: number): void {
    const wanted = this.waiting.get(uri);
    if (wanted === undefined || version >= wanted.version) {
      this.waiting.delete(uri);
      this.judged.set(uri, version);
    }
  }

  /** A text is no longer shown: nobody waits for it. */
  hidden(uri: string): void {
    this.waiting.delete(uri);
  }

  /** A text is closed: when it comes back it is a new one. */
  closed(uri: string): void {
    this.waiting.delete(uri);
    this.judged.delete(uri);
  }

  /** The server is gone, and with it every question and answer. */
  reset(): void {
    this.waiting.clear();
    this.judged.clear();
  }

  /** When the oldest open question was asked, or nothing when all is judged. */
  get waitingSince(): number | undefined {
    let oldest: number | undefined;
    for (const { since } of this.waiting.values()) {
      oldest = oldest === undefined ? since : Math.min(oldest, since);
    }
    return oldest;
  }
}
