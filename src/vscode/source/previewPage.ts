import type { ChoiceWords } from './choice';
import { keepRecords } from './pageRecords';
import type { KeptRecords, RecordMessage } from './records';

/** What the panel can show of a pack: all of it, the refit in short, the map, or the bags. */
export type Page = 'cards' | 'refit' | 'map' | 'bags';

/** What the page tells the extension. */
export type FromPage =
  | { readonly kind: 'ready' }
  | { readonly kind: 'step'; readonly number: number }
  | { readonly kind: 'place'; readonly number: number; readonly call: number }
  | { readonly kind: 'page'; readonly page: Page }
  | { readonly kind: 'choose'; readonly index: number }
  | { readonly kind: 'other' }
  | { readonly kind: 'print' }
  | RecordMessage;

/** A place that a step comes from, as the page names it: the line that it was written at, or a `do` line that brought it in. */
export interface OriginWords {
  readonly text: string;
  readonly number: number;
  /** Which of the `do` lines, from 0; -1 for the line of the step itself. */
  readonly call: number;
}

/** What the extension tells the page. */
export type ToPage =
  | {
      readonly kind: 'reveal';
      /** The steps to mark; none for the cover. */
      readonly steps: readonly number[];
      /** Whether to bring them into sight. */
      readonly scroll: boolean;
      readonly origins: readonly OriginWords[];
      /** The procedure that the cursor is in, where that is another than the one shown; else empty. */
      readonly other: string;
    }
  | { readonly kind: 'show'; readonly page: Page }
  | { readonly kind: 'stale'; readonly reason: string }
  | { readonly kind: 'fresh' };

/** What a page is opened with. */
export interface Opening {
  /** What could be shown of the procedure, in words. */
  readonly names: readonly ChoiceWords[];
  /** Which of it is shown. */
  readonly shown: number;
  readonly page: Page;
  readonly kept: KeptRecords;
}

/** Runs in the page, before the pack's own script: shows the steps of the cursor, and tells what is selected. */
function follow(opening: Opening, keep: typeof keepRecords): void {
  // Given to the page by the editor.
  // biome-ignore lint/suspicious/noExplicitAny: the editor's own object, whose types are not the extension's.
  const page = globalThis as any;
  const { document } = page;
  const editor = page.acquireVsCodeApi();
  const post = (message: FromPage) => editor.postMessage(message);
  // biome-ignore lint/suspicious/noExplicitAny: an element of the page.
  type Element = any;
  keep(opening.kept, post);
  // The cards look as they are printed: the letters of a dark theme could not be read on their white.
  document.getElementById('_defaultStyles')?.remove();
  const look = new page.CSSStyleSheet();
  look.replaceSync(`
    .panel { display: flex; flex-wrap: wrap; align-items: center; gap: .25rem .5rem; margin: 0; padding: .25rem 0; background: #fff; color: #14171a; }
    .panel button { min-height: 28px; padding: 0 .5rem; border: 1px solid; border-radius: 3px; background: #fff; color: inherit; font: inherit; font-size: .875rem; max-width: 100%; overflow-wrap: anywhere; text-align: left; }
    .panel [aria-pressed=true] { background: #14171a; color: #fff; }
    .panel select { font: inherit; min-height: 28px; max-width: 100%; }
    .panel label { max-width: 100%; }
    .panel[hidden] { display: none; }
    .panel.told { position: sticky; top: 0; z-index: 10; padding: .5rem; border: 2px solid; }
    .panel.origins { position: sticky; bottom: 0; z-index: 10; border-top: 2px solid; }
    body { padding-bottom: 1rem; }
    html:not([data-record]) .tools:not(:has(:modal)) { display: none; }
    [data-show=refit] main > :not(.refit), [data-show=map] main > :not(.ends), [data-show=map] .ends > :not(#map) { display: none; }
    [data-show=bags] main > :not(#bags) { display: none; }
    [data-show=refit] :is(.figure, .pattern, .sub, .reading, .words, .standing, .card-foot, .camera) { display: none; }
  `);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, look];
  const made = (name: string, kind: string): Element => {
    const one = document.createElement(name);
    one.className = kind;
    return one;
  };
  const button = (text: string, pressed: () => void): Element => {
    const one = made('button', '');
    one.type = 'button';
    one.textContent = text;
    one.addEventListener('click', pressed);
    return one;
  };

  const note = made('p', 'panel told');
  note.hidden = true;
  note.setAttribute('role', 'status');
  document.body.prepend(note);
  const tell = (text: string) => {
    note.textContent = text;
    note.hidden = false;
  };

  // The editor lets a page neither print nor ask. So a browser prints, and what has to be sure is pressed twice.
  page.print = () => {
    tell('The editor prints no page: the cards open in your browser. Print them there.');
    post({ kind: 'print' });
  };
  let asked = { question: '', until: 0 };
  page.confirm = (question: string) => {
    const sure = question === asked.question && Date.now() < asked.until;
    asked = sure ? { question: '', until: 0 } : { question, until: Date.now() + 10_000 };
    note.hidden = sure;
    if (!sure) {
      tell(`${question} Press once more to go on.`);
    }
    return sure;
  };

  // What the choices differ in: a list for each, so that none is as long as all combinations.
  const current = opening.names[opening.shown];
  const bar = made('p', 'panel choices');
  for (const [key, other, title] of [
    ['arguments', 'machine', 'Arguments: '],
    ['machine', 'arguments', 'Machine: '],
  ] as const) {
    const values = [...new Set(opening.names.map((name) => name[key]))];
    if (current === undefined || values.length < 2) {
      continue;
    }
    const select = document.createElement('select');
    const indices: number[] = [];
    for (const value of values) {
      const together = opening.names.findIndex((name) => name[key] === value && name[other] === current[other]);
      const index = together < 0 ? opening.names.findIndex((name) => name[key] === value) : together;
      indices.push(index);
      const option = document.createElement('option');
      option.textContent = opening.names[index]?.isProven ? value : `${value} (not proven)`;
      option.selected = value === current[key];
      select.append(option);
    }
    select.addEventListener('change', () => post({ kind: 'choose', index: indices[select.selectedIndex] ?? 0 }));
    const label = document.createElement('label');
    label.append(title, select);
    bar.append(label);
  }
  if (bar.firstChild !== null) {
    document.body.prepend(bar);
  }

  // The pages: one pack, of which only a part is shown.
  const pages = made('nav', 'panel pages');
  pages.setAttribute('aria-label', 'What is shown');
  const show = (name: Page) => {
    document.documentElement.dataset.show = name;
    for (const one of pages.children) {
      one.setAttribute('aria-pressed', String(one.dataset.page === name));
    }
  };
  const back = button('Back', () => {
    const from = trail.pop();
    back.hidden = trail.length === 0;
    if (from !== undefined) {
      show(from.page);
      page.scrollTo(0, from.top);
    }
  });
  back.hidden = true;
  const trail: { page: Page; top: number }[] = [];
  for (const [name, text, there] of [
    ['cards', 'Cards', 'main, #step-1'],
    ['refit', 'Refit', '.refit'],
    ['map', 'Map', '#map'],
    ['bags', 'Bags', '#bags'],
  ] as const) {
    if (document.querySelector(there) !== null) {
      const one = button(text, () => {
        show(name);
        page.scrollTo(0, 0);
        post({ kind: 'page', page: name });
      });
      one.dataset.page = name;
      pages.append(one);
    }
  }
  const record = button('Record', () => {
    const isOpen = document.documentElement.toggleAttribute('data-record');
    record.setAttribute('aria-expanded', String(isOpen));
    if (isOpen) {
      page.scrollTo(0, 0);
    }
  });
  record.setAttribute('aria-expanded', 'false');
  if (document.querySelector('.tools') !== null) {
    pages.append(record);
  }
  pages.append(back);
  document.body.prepend(pages);
  show(
    document.querySelector({ cards: 'main', refit: '.refit', map: '#map', bags: '#bags' }[opening.page]) === null ? 'cards' : opening.page,
  );

  let marked: Element[] = [];
  const isShown = (one: Element) => one.getClientRects().length > 0;
  const mark = (places: Element[]) => {
    for (const place of marked) {
      place.style.outline = '';
    }
    marked = places;
    for (const place of marked) {
      place.style.outline = '3px solid';
    }
  };

  // A link within the pack. The editor knows of no such link in a drawing, so the page goes there itself.
  page.addEventListener(
    'click',
    (event: Element) => {
      const link = event.target.closest('a[href^="#"]');
      const there = link === null ? null : document.getElementById(decodeURIComponent(link.getAttribute('href').slice(1)));
      if (there === null) {
        return;
      }
      event.preventDefault();
      if (link.namespaceURI !== document.documentElement.namespaceURI) {
        event.stopPropagation();
      }
      trail.push({ page: document.documentElement.dataset.show, top: page.scrollY });
      back.hidden = false;
      if (!isShown(there)) {
        show('cards');
      }
      mark([there]);
      there.scrollIntoView({ block: there.matches('.card') ? 'start' : 'center' });
    },
    true,
  );

  const origins = made('p', 'panel origins');
  origins.hidden = true;
  document.body.append(origins);
  const reveal = (data: Extract<ToPage, { kind: 'reveal' }>) => {
    const places = data.steps.flatMap((number) => [
      document.getElementById(`step-${number}`),
      ...document.querySelectorAll(`#map a[href="#step-${number}"]`),
    ]);
    const found = (data.steps.length === 0 ? [document.getElementById('cover')] : places).filter((place) => place !== null);
    mark(found);
    const shown = found.filter(isShown);
    const isInSight = (one: Element) => {
      const { top, bottom } = one.getBoundingClientRect();
      return top >= 0 && bottom <= page.innerHeight;
    };
    if (data.scroll && !shown.some(isInSight)) {
      shown[0]?.scrollIntoView({ block: shown[0].getBoundingClientRect().height > page.innerHeight / 2 ? 'start' : 'center' });
    }
    origins.replaceChildren(
      ...data.origins.map(({ text, number, call }) => button(text, () => post({ kind: 'place', number, call }))),
      ...(data.other === '' ? [] : [button(`Show the cards of ${data.other}`, () => post({ kind: 'other' }))]),
    );
    origins.hidden = origins.firstChild === null;
  };

  page.addEventListener('message', ({ data }: { data: ToPage }) => {
    if (data.kind === 'stale') {
      tell(`As it was before the last change. ${data.reason}`);
    } else if (data.kind === 'fresh') {
      note.hidden = true;
    } else if (data.kind === 'show') {
      show(data.page);
      page.scrollTo(0, 0);
    } else if (data.kind === 'reveal') {
      reveal(data);
    }
  });

  page.addEventListener('click', ({ target }: Element) => {
    if (target.closest('a, button, input, label, summary, textarea, select') !== null) {
      return;
    }
    const step = target.closest('[id^="step-"]');
    const number = Number(/^step-(\d+)$/.exec(step?.id ?? '')?.[1]);
    if (number > 0) {
      post({ kind: 'step', number });
    }
  });
  post({ kind: 'ready' });
}

/**
 * A pack as a page of the editor: with a script that follows the cursor. The pack's own policy stays, and lets this script in by its nonce.
 * @param pack the pack as the program wrote it.
 * @param nonce a word that nobody could guess.
 * @param opening what it is opened with.
 */
export function previewPage(pack: string, nonce: string, opening: Opening): string {
  const policy = /(<meta http-equiv="Content-Security-Policy" content="[^"]*script-src )/;
  const own = pack.lastIndexOf('<script>');
  const end = own < 0 ? pack.lastIndexOf('</body>') : own;
  if (!policy.test(pack) || end < 0) {
    throw new Error('The pack is not a page that this version of the extension can show.');
  }
  const data = JSON.stringify(opening).replaceAll('<', '\\u003c');
  const script = `<script nonce="${nonce}">(${follow.toString()})(${data},${keepRecords.toString()})</script>`;
  return `${pack.slice(0, end)}${script}${pack.slice(end)}`.replace(policy, `$1'nonce-${nonce}' `);
}

/** A page that says why there is nothing to show. */
export function emptyPage(reason: string): string {
  const text = reason.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'"><title>Cards</title></head><body><p>${text}</p></body></html>`;
}
