import type { KeptRecord, KeptRecords, RecordMessage } from './records';

/**
 * Runs in the page before the pack's own script: gives it a store that lasts from page to page, in which what is ticked goes by the words of
 * its step. So a tick stays with its step while numbers change, and goes where its step says something else by now: it never comes to stand at
 * another step. One of several steps in the same words is known by its neighbours, or not at all.
 */
export function keepRecords(kept: KeptRecords, tell: (message: RecordMessage) => void): void {
  // biome-ignore lint/suspicious/noExplicitAny: the page, whose types are not the extension's.
  const page = globalThis as any;
  const { document } = page;
  const { job, variant = '', revision } = document.body.dataset;
  if (job === undefined) {
    return;
  }
  const prefix = `procscript record: ${job} / ${variant.trim()} / ${revision} / `;
  const form = 'procscript record 1';
  // biome-ignore lint/suspicious/noExplicitAny: elements of the page.
  type Field = any;

  // The words of a place, without what only says where it stands.
  const words = (place: Field): string => {
    const copy = place.cloneNode(true);
    for (const number of copy.querySelectorAll('.no, .hide, a[href^="#step-"]')) {
      number.textContent = '#';
    }
    return copy.textContent.replace(/\s+/g, ' ').trim();
  };
  const fields: Field[] = [...document.querySelectorAll('[data-field]')];
  const places = fields.map((field) => field.closest('.step') ?? field.closest('tr, li, p, .sub, .place, .energy') ?? field.parentElement);
  const known = new Map<Field, string>();
  for (const place of places) {
    if (!known.has(place)) {
      const card = place.closest('.card');
      const kind =
        ['strip', 'work', 'refit'].find((name) => card?.classList.contains(name)) ??
        card?.querySelector('h1, h2')?.textContent.trim() ??
        '';
      known.set(place, `${kind}: ${words(place)}`);
    }
  }
  const inOrder = [...known.keys()];
  const count = new Map<string, number>();
  for (const text of known.values()) {
    count.set(text, (count.get(text) ?? 0) + 1);
  }
  const told = new Map<Field, string>(
    inOrder.map((place, at) => {
      const text = known.get(place) ?? '';
      const beside = (other: number) => known.get(inOrder[other]) ?? '';
      return [place, count.get(text) === 1 ? text : `${text} | after: ${beside(at - 1)} | before: ${beside(at + 1)}`];
    }),
  );
  const printOf = new Map<string, string>();
  const twice = new Set<string>();
  const seen = new Set<string>();
  fields.forEach((field, at) => {
    const place = places[at];
    // Of several fields in one place, which one: by its name, without the numbers of steps and of places in lists, and by its own words.
    const name: string = field.dataset.field;
    const within = name.startsWith('step-') ? name.replace(/^step-\d+/, 'step') : name.replace(/\d+/g, '#');
    const own = field.id === '' ? '' : (document.querySelector(`label[for="${field.id}"]`)?.textContent ?? '');
    const print = `${told.get(place)} | ${within} ${own.replace(/\s+/g, ' ').trim()}`;
    if (seen.has(print)) {
      twice.add(print);
    }
    seen.add(print);
    printOf.set(field.dataset.field, print);
  });
  for (const [name, print] of printOf) {
    if (twice.has(print)) {
      printOf.delete(name);
    }
  }

  // What the pack's script finds when it looks for its records: those of this job, in the numbers of this page.
  const filledBy = new Map<string, KeptRecord['filled']>(kept.records.map((record) => [record.id, record.filled]));
  const store = (changed: (key: string, value: string | undefined) => void) =>
    Object.create({
      getItem(key: string) {
        return Object.hasOwn(this, key) ? (this as unknown as Record<string, string>)[key] : null;
      },
      setItem(key: string, value: string) {
        (this as unknown as Record<string, string>)[key] = value;
        changed(key, value);
      },
      removeItem(key: string) {
        delete (this as unknown as Record<string, string>)[key];
        changed(key, undefined);
      },
    });
  const records = store((key, value) => {
    const id = key.slice(prefix.length);
    if (!key.startsWith(prefix)) {
      return;
    }
    if (value === undefined) {
      filledBy.delete(id);
      tell({ kind: 'forget', id });
      return;
    }
    const { started, changed, fields: now } = JSON.parse(value);
    // What stands at steps that this page does not have stays: an edit that is taken back brings them back.
    const here = new Set(printOf.values());
    const filled: Record<string, boolean | string> = Object.fromEntries(
      Object.entries(filledBy.get(id) ?? {}).filter(([print]) => !here.has(print)),
    );
    for (const [name, one] of Object.entries(now as Record<string, boolean | string>)) {
      const print = printOf.get(name);
      if (print !== undefined) {
        filled[print] = one;
      }
    }
    filledBy.set(id, filled);
    tell({ kind: 'record', record: { id, started, changed, filled } });
  });
  const tab = store((_, value) => {
    if (value !== undefined) {
      tell({ kind: 'current', id: value });
    }
  });
  for (const { id, started, changed, filled } of kept.records) {
    const now = Object.fromEntries(
      [...printOf].filter(([, print]) => Object.hasOwn(filled, print)).map(([name, print]) => [name, filled[print]]),
    );
    // Beside the text there is no next machine that a record of yesterday could be mixed up with: the page goes on with it and does not ask.
    const last = id === kept.current ? new Date().toISOString() : changed;
    records[prefix + id] = JSON.stringify({ form, job, variant: variant.trim(), revision, id, started, changed: last, fields: now });
  }
  if (kept.current !== undefined) {
    tab[prefix] = kept.current;
  }
  Object.defineProperty(page, 'localStorage', { value: records, configurable: true });
  Object.defineProperty(page, 'sessionStorage', { value: tab, configurable: true });
}
