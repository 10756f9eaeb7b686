/** What the server is doing, as far as the connection knows. */
export type ServerState =
  | { readonly kind: 'starting' }
  | { readonly kind: 'running' }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly reason: string };

/** What there is to show. */
export interface Standing {
  readonly server: ServerState;
  /** When the oldest text that is not judged yet was sent, in milliseconds. */
  readonly waitingSince: number | undefined;
  readonly errors: number;
  readonly warnings: number;
  readonly hints: number;
  readonly now: number;
}

/** What the status item says. */
export interface Status {
  readonly state: 'checked' | 'working' | 'failed';
  readonly text: string;
  readonly tooltip: string;
}

/** A server that is silent for this long is reported as failed, in milliseconds. */
export const patience = 10_000;

/** Says how things stand. Only a running server that has judged every text shown may be told as 'checked'. */
export function statusOf(standing: Standing): Status {
  const { server, waitingSince, now } = standing;
  switch (server.kind) {
    case 'starting':
      return working('The language server is starting.');
    case 'stopped':
      return failed('The language server is not running, so nothing is checked.');
    case 'failed':
      return failed(server.reason);
    case 'running':
      if (waitingSince === undefined) {
        return checked(standing);
      }
      return now - waitingSince < patience
        ? working('Checking.')
        : failed(`The language server has not answered for ${Math.floor((now - waitingSince) / 1000)} s.`);
  }
}

function checked({ errors, warnings, hints }: Standing): Status {
  if (errors === 0 && warnings === 0) {
    const found = hints === 0 ? 'no findings in the files shown.' : `no errors or warnings, ${counted(hints, 'hint')}. Select to see them.`;
    return { state: 'checked', text: '$(check) ProcScript', tooltip: `Checked: ${found}` };
  }
  const icon = errors > 0 ? '$(error)' : '$(warning)';
  const counts = [counted(errors, 'error'), counted(warnings, 'warning'), counted(hints, 'hint')].join(', ');
  return { state: 'checked', text: `${icon} ProcScript: ${errors + warnings}`, tooltip: `Checked: ${counts}. Select to see them.` };
}

function working(tooltip: string): Status {
  return { state: 'working', text: '$(sync~spin) ProcScript', tooltip };
}

function failed(tooltip: string): Status {
  return { state: 'failed', text: '$(debug-disconnect) ProcScript: not checked', tooltip: `${tooltip} Select to start it again.` };
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
