/** What the extension reads of a plan, as the program publishes it. */
export interface Plan {
  readonly job: string;
  readonly title: string;
  readonly refit: readonly Card[];
}

/** A card: the steps of one stage. */
export interface Card {
  readonly title: string;
  readonly steps: readonly Step[];
}

/** A step. */
export interface Step {
  readonly number: number;
  readonly text: string;
  readonly torque: string;
  readonly because: string;
}
