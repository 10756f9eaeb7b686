/** A choice of arguments and options of a procedure. */
export interface ViewChoice {
  /** The procedure's name, with its arguments behind hyphens. */
  readonly job: string;
  readonly options: readonly string[];
  readonly isProven: boolean;
}

/** What people read of a choice: its arguments, and the options that the machine has. */
export function wordsOf({ job, options, isProven }: ViewChoice): string {
  const [, ...values] = job.split('-');
  const machine = options.length === 0 ? 'no options' : `with ${options.join(', ')}`;
  return [...(values.length === 0 ? [] : [values.join(', ')]), machine].join(': ') + (isProven ? '' : ' (not proven)');
}

/** Whether two choices are the same. */
export function isSame(one: Pick<ViewChoice, 'job' | 'options'>, other: Pick<ViewChoice, 'job' | 'options'>): boolean {
  return one.job === other.job && [...one.options].sort().join() === [...other.options].sort().join();
}
