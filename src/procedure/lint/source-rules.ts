/** Rules about where the values come from, who takes part, and what is spoken. */
import { lint } from '../../words/lint.ts';
import type { Finding, Rule } from './rule.ts';

export const sourceWithoutDate: Rule = ({ source }) =>
  source.issued === undefined ? [{ path: 'source.issued', message: lint.sourceWithoutDate }] : [];

const INVENTED = /\b(invented|fictitious|made-up|example|demo|demonstration|sample)\b/i;

export const inventedNotMarked: Rule = ({ invented, title, source }) =>
  !invented && [title, source.document].some((text) => INVENTED.test(text))
    ? [{ path: 'invented', message: lint.inventedNotMarked }]
    : [];

export const nobodyToWitness: Rule = (procedure) => {
  if ((procedure.persons ?? 1) >= 2) return [];
  const message = lint.nobodyToWitness;
  return procedure.steps.flatMap((step, i): Finding[] => {
    if (step.kind === 'witness') return [{ path: `steps.${i}`, message }];
    if (step.witness) return [{ path: `steps.${i}.witness`, message }];
    return step.kind === 'tighten' && step.confirm === 'witness each' ? [{ path: `steps.${i}.confirm`, message }] : [];
  });
};

export const liftNeedsMorePersons: Rule = ({ lift, persons = 1 }) =>
  lift !== undefined && lift.persons > persons
    ? [{ path: 'lift.persons', message: lint.liftNeedsMore(lift.persons, persons) }]
    : [];

/** What a person keeps in mind while the hands are busy (common practice). */
const MOST_WORDS = 20;

export const longToSay: Rule = ({ steps }) =>
  steps.flatMap((step, i) => {
    const words = (step.say ?? step.text).split(/\s+/).length;
    const message = lint.longToSay(words);
    return words > MOST_WORDS ? [{ path: `steps.${i}.${step.say === undefined ? 'text' : 'say'}`, message }] : [];
  });
