import type { ChoiceWords } from './choice';

/** What the page tells the extension. */
export type FromPage =
  | { readonly kind: 'ready' }
  | { readonly kind: 'step'; readonly number: number }
  | { readonly kind: 'choose'; readonly index: number }
  | { readonly kind: 'print' };

/** What the extension tells the page. */
export type ToPage = { readonly kind: 'reveal'; readonly number: number } | { readonly kind: 'stale'; readonly reason: string };

/** What could be shown of a procedure, in words, and which of it is shown. */
export interface Choices {
  readonly names: readonly ChoiceWords[];
  readonly shown: number;
}

/** Runs in the page: shows the step of the cursor, and tells which step, or which arguments and options, were selected. */
function follow(choices: Choices): void {
  // Given to the page by the editor.
  // biome-ignore lint/suspicious/noExplicitAny: the editor's own object, whose types are not the extension's.
  const page = globalThis as any;
  const { document } = page;
  const editor = page.acquireVsCodeApi();
  // The cards look as they are printed: the letters of a dark theme could not be read on their white.
  document.getElementById('_defaultStyles')?.remove();
  const note = document.createElement('p');
  note.hidden = true;
  note.setAttribute('role', 'status');
  Object.assign(note.style, {
    position: 'sticky',
    top: '0',
    margin: '0',
    padding: '.5rem',
    background: '#fff',
    border: '2px solid',
    zIndex: '10',
  });
  document.body.prepend(note);
  let shown: { style: { outline: string } } | null = null;
  const tell = (text: string) => {
    note.textContent = text;
    note.hidden = false;
  };

  // The editor lets a page neither print nor ask. So a browser prints, and what has to be sure is pressed twice.
  page.print = () => {
    tell('The editor prints no page: the cards open in your browser. Print them there.');
    editor.postMessage({ kind: 'print' } satisfies FromPage);
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
  const current = choices.names[choices.shown];
  const bar = document.createElement('p');
  Object.assign(bar.style, { display: 'flex', flexWrap: 'wrap', gap: '.25rem 1rem', margin: '0', padding: '.5rem 0' });
  for (const [key, other, title] of [
    ['arguments', 'machine', 'Arguments: '],
    ['machine', 'arguments', 'Machine: '],
  ] as const) {
    const values = [...new Set(choices.names.map((name) => name[key]))];
    if (current === undefined || values.length < 2) {
      continue;
    }
    const select = document.createElement('select');
    Object.assign(select.style, { font: 'inherit', minHeight: '24px', maxWidth: '100%' });
    const indices: number[] = [];
    for (const value of values) {
      const together = choices.names.findIndex((name) => name[key] === value && name[other] === current[other]);
      const index = together < 0 ? choices.names.findIndex((name) => name[key] === value) : together;
      indices.push(index);
      const option = document.createElement('option');
      option.textContent = choices.names[index]?.isProven ? value : `${value} (not proven)`;
      option.selected = value === current[key];
      select.append(option);
    }
    select.addEventListener('change', () =>
      editor.postMessage({ kind: 'choose', index: indices[select.selectedIndex] ?? 0 } satisfies FromPage),
    );
    const label = document.createElement('label');
    label.append(title, select);
    bar.append(label);
  }
  if (bar.firstChild !== null) {
    document.body.prepend(bar);
  }

  page.addEventListener('message', ({ data }: { data: ToPage }) => {
    if (data.kind === 'stale') {
      tell(`As it was before the last change. ${data.reason}`);
      return;
    }
    const step = document.getElementById(`step-${data.number}`);
    if (step === null) {
      return;
    }
    if (shown !== null) {
      shown.style.outline = '';
    }
    shown = step;
    step.style.outline = '3px solid';
    step.scrollIntoView({ block: 'center' });
  });

  // biome-ignore lint/suspicious/noExplicitAny: an event of the page.
  page.addEventListener('click', ({ target }: any) => {
    if (target.closest('a, button, input, label, summary, textarea') !== null) {
      return;
    }
    const step = target.closest('[id^="step-"]');
    const number = Number(/^step-(\d+)$/.exec(step?.id ?? '')?.[1]);
    if (number > 0) {
      editor.postMessage({ kind: 'step', number } satisfies FromPage);
    }
  });
  editor.postMessage({ kind: 'ready' } satisfies FromPage);
}

/**
 * A pack as a page of the editor: with a script that follows the cursor. The pack's own policy stays, and lets this script in by its nonce.
 * @param pack the pack as the program wrote it.
 * @param nonce a word that nobody could guess.
 * @param choices what else could be shown.
 */
export function previewPage(pack: string, nonce: string, choices: Choices): string {
  const policy = /(<meta http-equiv="Content-Security-Policy" content="[^"]*script-src )/;
  const end = pack.lastIndexOf('</body>');
  if (!policy.test(pack) || end < 0) {
    throw new Error('The pack is not a page that this version of the extension can show.');
  }
  const script = `<script nonce="${nonce}">(${follow.toString()})(${JSON.stringify(choices).replaceAll('<', '\\u003c')})</script>`;
  return `${pack.slice(0, end)}${script}${pack.slice(end)}`.replace(policy, `$1'nonce-${nonce}' `);
}

/** A page that says why there is nothing to show. */
export function emptyPage(reason: string): string {
  const text = reason.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'"><title>Cards</title></head><body><p>${text}</p></body></html>`;
}
