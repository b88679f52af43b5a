/** Rules about joints: seals, threads, and fasteners started by hand. */
import { layOut } from '../../tightening/pattern.ts';
import { lint } from '../../words/lint.ts';
import type { Procedure } from '../schema.ts';
import type { StepOf, TightenStep } from '../steps.ts';
import { isWorkedWith, type Placed, type Rule, stepsOf } from './rule.ts';

const tightenings = (procedure: Procedure, pattern: string): readonly Placed<TightenStep>[] =>
  stepsOf(procedure, 'tighten').filter(({ step }) => step.pattern === pattern);

type SealWork = StepOf<'do'>['seals'][number]['is'];
const sealSteps = (procedure: Procedure, seal: string, is: SealWork): readonly Placed<StepOf<'do' | 'check'>>[] =>
  [...stepsOf(procedure, 'do'), ...stepsOf(procedure, 'check')].filter(({ step }) =>
    step.seals.some((work) => work.seal === seal && work.is === is),
  );

export const tightenedBeforeSealSeated: Rule = (procedure) =>
  procedure.patterns.flatMap(({ id, seal }) => {
    if (seal === undefined) return [];
    const seated = sealSteps(procedure, seal, 'seated');
    return tightenings(procedure, id)
      .filter((now) => !seated.some((before) => before.index < now.index && isWorkedWith(before.step, now.step)))
      .map(({ index }) => ({ path: `steps.${index}`, message: lint.sealNotSeated(seal) }));
  });

export const sealNeverInspected: Rule = (procedure) =>
  procedure.seals.flatMap(({ id, reuse }, i) =>
    reuse === 'if it passes inspection' && sealSteps(procedure, id, 'inspected').length === 0
      ? [{ path: `seals.${i}.reuse`, message: lint.sealNotInspected }]
      : [],
  );

export const reuseWithoutCriteria: Rule = ({ seals }) =>
  seals.flatMap(({ reuse, criteria }, i) =>
    reuse === 'if it passes inspection' && criteria.length === 0
      ? [{ path: `seals.${i}.criteria`, message: lint.noCriteria }]
      : [],
  );

export const singleUseSealReused: Rule = (procedure) =>
  stepsOf(procedure, 'check').flatMap(({ step, index }) => {
    const single = step.seals.some(({ seal }) =>
      procedure.seals.some(({ id, reuse }) => id === seal && reuse === 'never'),
    );
    const offered = step.outcomes.findIndex(({ id, then }) => id === 'reuse' && then === 'go on');
    return single && offered >= 0
      ? [{ path: `steps.${index}.outcomes.${offered}`, message: lint.singleUseOffered }]
      : [];
  });

export const patternNeverTightened: Rule = (procedure) =>
  procedure.patterns.flatMap(({ id, name }, i) =>
    tightenings(procedure, id).length === 0 ? [{ path: `patterns.${i}`, message: lint.notTightened(name) }] : [],
  );

/** Run down crooked, the first fastener crosses its thread and pulls the others out of line (common practice). */
export const tightenedWithoutHandStart: Rule = (procedure) => {
  const starts = stepsOf(procedure, 'do');
  return procedure.patterns.flatMap(({ id }) => {
    const [first] = tightenings(procedure, id);
    if (first === undefined || first.step.passes[0]?.kind === 'snug') return [];
    const isStarted = starts.some(
      ({ step, index }) => step.handStart.includes(id) && index < first.index && isWorkedWith(step, first.step),
    );
    return isStarted ? [] : [{ path: `steps.${first.index}`, message: lint.notStartedByHand(id) }];
  });
};

export const threadConditionMissing: Rule = (procedure) =>
  procedure.patterns.flatMap(({ id, threadCondition }, i) =>
    threadCondition === undefined && tightenings(procedure, id).length > 0
      ? [
          {
            path: `patterns.${i}.threadCondition`,
            message: lint.threadConditionMissing,
          },
        ]
      : [],
  );

const LUBRICATED_WITH_WHAT = /^(lightly )?(oiled|lubricated|greased|wet|coated|anti-seize)( threads?)?$/i;

export const lubricantNotNamed: Rule = ({ patterns }) =>
  patterns.flatMap(({ threadCondition = '' }, i) =>
    LUBRICATED_WITH_WHAT.test(threadCondition)
      ? [{ path: `patterns.${i}.threadCondition`, message: lint.lubricantNotNamed(threadCondition) }]
      : [],
  );

export const usedNutsWithoutMinimum: Rule = (procedure) =>
  stepsOf(procedure, 'tighten').flatMap(({ step: { runDown }, index }) =>
    runDown?.used === true && runDown.minimum === undefined
      ? [
          {
            path: `steps.${index}.runDown.minimum`,
            message: lint.usedNutsWithoutMinimum,
          },
        ]
      : [],
  );

/** Of fewer, none stands across from another. */
const FEWEST_ACROSS = 4;

/** Full torque on the first round pulls one side down before the other sits (common practice). */
export const torqueBeforeSnug: Rule = (procedure) =>
  stepsOf(procedure, 'tighten').flatMap(({ step, index }) => {
    const pattern = procedure.patterns.find(({ id }) => id === step.pattern);
    const isFew = pattern === undefined || layOut(pattern.layout).positions.length < FEWEST_ACROSS;
    const earlier = tightenings(procedure, step.pattern).some((other) => other.index < index);
    const worked = step.passes.filter(({ kind }) => kind !== 'circular check' && kind !== 're-check');
    const [only] = worked;
    return isFew ||
      earlier ||
      worked.length > 1 ||
      only === undefined ||
      only.kind === 'snug' ||
      only.kind === 'increments'
      ? []
      : [{ path: `steps.${index}.passes.0`, message: lint.fullTorqueFirst }];
  });

/** A component that takes a lift leaves its studs with the last fastener (common practice). */
export const heavyReleasedUnheld: Rule = (procedure) => {
  const releases = stepsOf(procedure, 'loosen');
  const last = releases.at(-1);
  if (procedure.lift === undefined || last === undefined || releases.some(({ step }) => step.heldBefore)) return [];
  return [{ path: `steps.${last.index}`, message: lint.releasedUnheld }];
};
