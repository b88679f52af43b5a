import { isFaint, judgeBackground } from './sound-judgement.ts';

/** What a microphone check has measured for one person, at one place. */
export interface Measured {
  /** dBFS of the background; null where no sound came at all. */
  readonly noise: number | null;
  /** dBFS of the person's speech without the background; null where none was heard. */
  readonly speech: number | null;
  readonly isClipped: boolean;
  /** How many phrases they were asked to say, and how many of those were heard as they were asked for. */
  readonly asked: number;
  readonly right: number;
}

export type Fitness = 'fit' | 'fit with care' | 'do not start by voice';

/** What is behind it. The first four forbid to start by voice. */
export type Finding =
  'no sound' | 'too loud' | 'not heard' | 'too many wrong' | 'loud' | 'some wrong' | 'faint' | 'clipped';

const GRAVE: ReadonlySet<Finding> = new Set(['no sound', 'too loud', 'not heard', 'too many wrong']);

/** Of five phrases three: who is misheard more often spends the job on corrections, and one of them slips through. */
export const LEAST_RIGHT_SHARE = 0.6;

export interface Verdict {
  readonly fitness: Fitness;
  /** The gravest first; [] where all is well. */
  readonly findings: readonly Finding[];
}

/** Whether this person may start by voice here. */
export function verdictOn(measured: Measured): Verdict {
  const findings = findingsIn(measured);
  if (findings.some((finding) => GRAVE.has(finding))) return { fitness: 'do not start by voice', findings };
  return { fitness: findings.length === 0 ? 'fit' : 'fit with care', findings };
}

function findingsIn(measured: Measured): readonly Finding[] {
  const { noise, speech, isClipped, asked, right } = measured;
  if (noise === null) return ['no sound'];
  const background = judgeBackground({ noise, speech });
  const isMisheard = right < LEAST_RIGHT_SHARE * asked;
  const all: readonly (Finding | false)[] = [
    background === 'too loud to trust' && 'too loud',
    asked > 0 && speech === null && 'not heard',
    speech !== null && isMisheard && 'too many wrong',
    background === 'loud' && 'loud',
    speech !== null && !isMisheard && right < asked && 'some wrong',
    isFaint({ speech }) && 'faint',
    isClipped && 'clipped',
  ];
  return all.filter((finding) => finding !== false);
}
