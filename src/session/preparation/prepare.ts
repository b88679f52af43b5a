/** From what was entered to the first events of a session; or to the reasons why the work cannot begin. */
import { shownLimit, shownLoad } from '../../lifting/index.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import { rounded, toWritten } from '../../units/index.ts';
import type { EventBody } from '../event.ts';
import { begin } from '../fold.ts';
import { answerCondition } from '../steps.ts';
import { assess } from './assess.ts';
import type { Circumstances, Entered } from './entered.ts';
import type { PreparedFact } from './fact.ts';
import type { Finding } from './finding.ts';
import { capacityUnit, carryingOf, containerHere } from './load.ts';
import { adaptersIn, expiringIn, hazardsIn, questionsOf, stepsThatMayApply, toolsIn } from './needed.ts';
import { helpersIn, peopleIn } from './people.ts';
import { typedDay, typedQuantity } from './typed.ts';

export type Prepared =
  /** What is written behind the opening, all of it together. */
  | { readonly kind: 'prepared'; readonly events: readonly EventBody[] }
  | { readonly kind: 'not prepared'; readonly stops: readonly Finding[] };

/** Begins nothing that something stops. What only warns goes into the record, word for word. */
export function prepare(procedure: Procedure, entered: Entered, seen: Circumstances): Prepared {
  const findings = assess(procedure, entered, seen);
  const stops = findings.filter((finding) => finding.stops);
  if (stops.length > 0) return { kind: 'not prepared', stops };
  const warnings = findings.map(({ sentence }): PreparedFact => ({ of: 'warning', sentence }));
  const facts = [...factsOf(procedure, entered, seen), ...warnings];
  return {
    kind: 'prepared',
    events: [
      ...facts.map((fact): EventBody => ({ kind: 'prepared', fact })),
      ...conditionsAnswered(procedure, entered),
    ],
  };
}

function factsOf(procedure: Procedure, entered: Entered, { microphones }: Circumstances): readonly PreparedFact[] {
  const { source } = procedure;
  const steps = stepsThatMayApply(procedure, entered.conditions);
  return [
    {
      of: 'approved data',
      document: source.document,
      revision: source.revision,
      issued: source.issued ?? null,
    },
    ...helpersIn(entered).map((name): PreparedFact => ({ of: 'helper', name })),
    ...toolsIn(procedure, steps).flatMap(({ id }): readonly PreparedFact[] => {
      const label = typedDay(entered.calibrations.get(id) ?? '');
      return label.kind === 'value' ? [{ of: 'tool', tool: id, calibrationDue: label.value, from: 'label' }] : [];
    }),
    ...adaptersIn(procedure, steps).flatMap(({ id, length }): readonly PreparedFact[] => {
      const measured = typedQuantity('length', entered.adapters.get(id) ?? '', length.unit);
      return measured.kind === 'value'
        ? [{ of: 'adapter', adapter: id, measured: toWritten(measured.value), filed: toWritten(length) }]
        : [];
    }),
    ...expiringIn(procedure).flatMap(({ id }): readonly PreparedFact[] => {
      const day = typedDay(entered.expiries.get(id) ?? '');
      return day.kind === 'value' ? [{ of: 'consumable', consumable: id, expires: day.value }] : [];
    }),
    ...containerFacts(procedure, entered),
    ...liftFacts(procedure, entered),
    ...hazardsIn(steps).flatMap(({ places }) => places.map((place): PreparedFact => ({ of: 'hazard', ...place }))),
    ...microphones.map((check): PreparedFact => ({ of: 'microphone', ...check })),
  ];
}

function containerFacts(procedure: Procedure, { capacity: text }: Entered): readonly PreparedFact[] {
  const unit = capacityUnit(procedure);
  if (unit === null) return [];
  const typed = typedQuantity('volume', text, unit);
  const here = typed.kind === 'value' ? typed.value : null;
  const capacity = here ?? procedure.container?.capacity;
  const check = containerHere(procedure, here);
  if (capacity === undefined || check === null) return [];
  const needed = rounded(check.needed, check.needed.unit, 1, 'up');
  return [{ of: 'container', capacity: toWritten(capacity), needed, from: here ? 'here' : 'procedure file' }];
}

function liftFacts(procedure: Procedure, { handling }: Entered): readonly PreparedFact[] {
  const { load, lift } = carryingOf(procedure);
  if (lift === null || handling === null) return [];
  const { recommendedLimit: limit } = lift.assessment;
  return [
    {
      of: 'lift',
      handling,
      load: shownLoad(load),
      limit: shownLimit(limit),
      least: lift.least,
    },
  ];
}

/** The questions about the unit that are answered already, as if they were answered when the work comes to them. */
function conditionsAnswered(procedure: Procedure, { conditions, ...entered }: Entered): readonly EventBody[] {
  let state = begin(procedure, peopleIn({ conditions, ...entered }));
  const events: EventBody[] = [];
  for (const { id } of questionsOf(procedure)) {
    const is = conditions.get(id);
    if (is === undefined) continue;
    const decision = answerCondition(state, id, is);
    if (decision.kind === 'refused') continue;
    events.push(...decision.events);
    const skipped = decision.events.filter(({ kind }) => kind === 'step skipped').length;
    state = { ...state, conditions: new Map([...state.conditions, [id, is]]), at: state.at + skipped };
  }
  return events;
}
