/** A record of ticks and readings, as it is carried from one page to the next. */
export interface KeptRecord {
  readonly id: string;
  readonly started: string;
  readonly changed: string;
  /** What was filled in, by the words that it stands beside: numbers of steps change with the text. */
  readonly filled: Readonly<Record<string, boolean | string>>;
}

/** The records of one job, and which of them ticks go into. */
export interface KeptRecords {
  readonly records: readonly KeptRecord[];
  readonly current: string | undefined;
}

/** What the page tells of its records. */
export type RecordMessage =
  | { readonly kind: 'record'; readonly record: KeptRecord }
  | { readonly kind: 'forget'; readonly id: string }
  | { readonly kind: 'current'; readonly id: string };

/** Where records lie from one session to the next. */
interface Memory {
  get(key: string): KeptRecords | undefined;
  update(key: string, value: KeptRecords | undefined): unknown;
}

const none: KeptRecords = { records: [], current: undefined };

/** Keeps what is ticked among the cards, by job: pages come and go with every change of the text. */
export class RecordKeeper {
  constructor(private readonly memory: Memory) {}

  /** The records of a job. */
  of(job: string): KeptRecords {
    return this.memory.get(keyOf(job)) ?? none;
  }

  /** Keeps what the page of a job tells. */
  hear(job: string, message: RecordMessage): void {
    const { records, current } = this.of(job);
    const others = (id: string) => records.filter((record) => record.id !== id);
    if (message.kind === 'record') {
      void this.memory.update(keyOf(job), { records: [...others(message.record.id), message.record], current });
    } else if (message.kind === 'current') {
      void this.memory.update(keyOf(job), { records, current: message.id });
    } else {
      const left = others(message.id);
      void this.memory.update(
        keyOf(job),
        left.length === 0 ? undefined : { records: left, current: current === message.id ? undefined : current },
      );
    }
  }
}

function keyOf(job: string): string {
  return `cards ${job}`;
}
