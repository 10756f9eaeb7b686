/** The program that checks, and where it comes from. */
export interface Program {
  readonly command: string;
  readonly from: 'setting' | 'extension' | 'searchPath';
}

/** The program that a setting names; else the one in the extension, else the one on the search path. */
export function chosenProgram(setting: string, bundled: string | undefined): Program {
  const named = setting.trim();
  if (named !== '') {
    return { command: named, from: 'setting' };
  }
  return bundled === undefined ? { command: 'procscript', from: 'searchPath' } : { command: bundled, from: 'extension' };
}

/** One sentence for a program that did not start: what to do about it. */
export function notStarted({ command, from }: Program): string {
  switch (from) {
    case 'setting':
      return `'${command}' did not start: the setting 'procscript.path' names it.`;
    case 'extension':
      return 'The program that came with the extension did not start on this machine.';
    case 'searchPath':
      return "The program 'procscript' is not on the search path; your shop's feed or the folder 'src/packaging' of its sources has it.";
  }
}

/** What to say of a program and an extension of different versions; undefined where they are of one. */
export function mismatch(program: string | undefined, extension: string): string | undefined {
  if (program === undefined || program === extension) {
    return undefined;
  }
  return `The program is of version ${program} and the extension of ${extension}: what one of them knows, the other may not.`;
}
