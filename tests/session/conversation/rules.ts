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

export const torqueOf = (text: string): number => Math.round(Number(text) * 10_000);

/** At the wrench. The drag of this very nut comes on top of what the manual gives (AC 43.13-1B, 7-40(d)). */
const atWrench = ({ share }: Rules, { round }: Call, torque: number, drag: number): number =>
  round === 0 ? torque : Math.round((torque + drag) * share);

export const windowOf = (rules: Rules, call: Call, drag: number) => ({
  least: atWrench(rules, call, call.least, drag),
  most: atWrench(rules, call, call.most, drag),
});

/** What is called out, and what a click stands for: the mark nearest to the target. */
export const settingOf = (rules: Rules, call: Call, drag: number): string | null =>
  call.target === null
    ? null
    : String((Math.round(atWrench(rules, call, call.target, drag) / call.mark) * call.mark) / 10_000);
