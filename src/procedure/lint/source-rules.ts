/** Rules about where the values come from, who takes part, and what is spoken. */
import type { Finding, Rule } from './rule.ts';

export const sourceWithoutDate: Rule = ({ source }) =>
  source.issued === undefined
    ? [{ path: 'source.issued', message: 'the source document has no date; state it, so that an old issue is noticed' }]
    : [];

const INVENTED = /\b(invented|fictitious|made-up|example|demo|demonstration|sample)\b/i;

export const inventedNotMarked: Rule = ({ invented, title, source }) =>
  !invented && [title, source.document].some((text) => INVENTED.test(text))
    ? [{ path: 'invented', message: 'the title or source speaks of invented values; mark the procedure as invented' }]
    : [];

export const nobodyToWitness: Rule = (procedure) => {
  if ((procedure.persons ?? 1) >= 2) return [];
  const message = 'a second person is asked for, but the file does not say that the work needs two';
  return procedure.steps.flatMap((step, i): Finding[] => {
    if (step.kind === 'witness') return [{ path: `steps.${i}`, message }];
    if (step.witness) return [{ path: `steps.${i}.witness`, message }];
    return step.kind === 'tighten' && step.confirm === 'witness each' ? [{ path: `steps.${i}.confirm`, message }] : [];
  });
};

export const liftNeedsMorePersons: Rule = ({ lift, persons = 1 }) =>
  lift !== undefined && lift.persons > persons
    ? [{ path: 'lift.persons', message: `the lift takes ${lift.persons} persons, but the work is for ${persons}` }]
    : [];

/** What a person keeps in mind while the hands are busy (common practice). */
const MOST_WORDS = 20;

export const longToSay: Rule = ({ steps }) =>
  steps.flatMap((step, i) => {
    const words = (step.say ?? step.text).split(/\s+/).length;
    const message = `${words} words are long to listen to; give a shorter "say"`;
    return words > MOST_WORDS ? [{ path: `steps.${i}.${step.say === undefined ? 'text' : 'say'}`, message }] : [];
  });
