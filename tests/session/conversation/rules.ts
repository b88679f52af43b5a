/** What the manual and the tools give for the step that is talked through. */

/** One stud in one round; torques in ten-thousandths of a newton metre, so that all sums are whole. */
export interface Call {
  readonly stud: number;
  /** 0 measures running torque, the drag of the nut. */
  readonly round: number;
  /** The manual's window and target at the fastener. Nothing is reached for where running torque is measured. */
  readonly least: number;
  readonly most: number;
  readonly target: number | null;
  /** One mark of the tool, and its first and last. */
  readonly mark: number;
  readonly scale: readonly [number, number];
}

export interface Rules {
  readonly confirm: 'each' | 'by going on' | 'witness each';
  /** Whether there is somebody else who may witness. */
  readonly hasWitness: boolean;
  readonly clicks: boolean;
  /** What the wrench shows of what the fastener gets. */
  readonly share: number;
  /** In the order of the manual. */
  readonly calls: readonly Call[];
}
