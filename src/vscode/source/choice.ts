/** A choice of arguments and options of a procedure. */
export interface ViewChoice {
  /** The procedure's name, with its arguments behind hyphens. */
  readonly job: string;
  readonly options: readonly string[];
  readonly isProven: boolean;
}

/** A choice as people read it. */
export interface ChoiceWords {
  /** The arguments; empty where the procedure takes none. */
  readonly arguments: string;
  /** The options that the machine has. */
  readonly machine: string;
  readonly isProven: boolean;
}

/** What people read of a choice. */
export function wordsOf({ job, options, isProven }: ViewChoice): ChoiceWords {
  const [, ...values] = job.split('-');
  return { arguments: values.join(', '), machine: options.length === 0 ? 'no options' : `with ${options.join(', ')}`, isProven };
}

/** Whether two choices are the same. */
export function isSame(one: Pick<ViewChoice, 'job' | 'options'>, other: Pick<ViewChoice, 'job' | 'options'>): boolean {
  return one.job === other.job && [...one.options].sort().join() === [...other.options].sort().join();
}
