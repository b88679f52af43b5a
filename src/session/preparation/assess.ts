/** Whether a job is prepared: everything that stops it and everything to be warned of, each with what to do. */
import type { Procedure } from '../../procedure/procedure.ts';
import { adapterFindings } from './adapters.ts';
import { withAdapter, withCalibration } from './as-found.ts';
import type { Circumstances, Entered } from './entered.ts';
import { stop, warn, type Finding } from './finding.ts';
import { containerFindings, liftFindings } from './load.ts';
import { adaptersIn, expiringIn, hazardsIn, stepsThatMayApply, toolsIn } from './needed.ts';
import { namedIn, peopleFindings } from './people.ts';
import { toolFindings } from './tools.ts';
import { typedDay, typedQuantity } from './typed.ts';

/** All findings, in the order of the page. Nothing that stops among them: the work may begin. */
export function assess(
  procedure: Procedure,
  entered: Entered,
  { day, microphones }: Circumstances,
): readonly Finding[] {
  const steps = stepsThatMayApply(procedure, entered.conditions);
  return [
    ...peopleFindings(procedure, steps, entered),
    ...(entered.isCurrentData ? [] : [dataNotCompared(procedure)]),
    ...toolFindings({ asFiled: procedure, asFound: asFound(procedure, entered) }, steps, entered.calibrations, day),
    ...adapterFindings(procedure, steps, entered.adapters),
    ...consumableFindings(procedure, entered.expiries, day),
    ...containerFindings(procedure, entered.capacity),
    ...liftFindings(procedure, entered.handling, namedIn(entered).length),
    ...hazardFindings(procedure, entered),
    ...microphones
      .filter(({ fitness }) => fitness === 'do not start by voice')
      .map(({ person }) =>
        warn(
          `microphone/${person}`,
          `${person} was not heard well enough at the microphone check: the ear stays closed, and pedal, keys and touch do the work.`,
        ),
      ),
  ];
}

/** The procedure with what can be read of labels and measures. */
export function asFound(procedure: Procedure, entered: Entered): Procedure {
  const steps = stepsThatMayApply(procedure, entered.conditions);
  const labelled = toolsIn(procedure, steps).reduce((found, { id }) => {
    const label = typedDay(entered.calibrations.get(id) ?? '');
    return label.kind === 'value' ? withCalibration(found, id, label.value) : found;
  }, procedure);
  return adaptersIn(procedure, steps).reduce((found, { id, length: { unit } }) => {
    const measured = typedQuantity('length', entered.adapters.get(id) ?? '', unit);
    return measured.kind === 'value' ? (withAdapter(found, id, measured.value) ?? found) : found;
  }, labelled);
}

function dataNotCompared({ source: { document, revision, issued } }: Procedure): Finding {
  const date = issued === undefined ? '' : ` of ${issued}`;
  return stop(
    'approved data',
    `Nobody said yet that ${document}, revision ${revision}${date}, is the current approved data. Compare it with the register; where it is not, do not work by it.`,
  );
}

function consumableFindings(
  procedure: Procedure,
  expiries: ReadonlyMap<string, string>,
  day: string,
): readonly Finding[] {
  return expiringIn(procedure).flatMap(({ id, name }): readonly Finding[] => {
    const field = `consumable/${id}` as const;
    const typed = typedDay(expiries.get(id) ?? '');
    switch (typed.kind) {
      case 'nothing':
        return [
          stop(
            field,
            `${name}: its expiry date is not entered. Read it off the packing; where none stands there, fetch another.`,
          ),
        ];
      case 'wrong':
        return [stop(field, `${name}: ${typed.why}`)];
      case 'value':
        return typed.value < day
          ? [
              stop(
                field,
                `${name}: it expired on ${typed.value}, and today is ${day}. Throw it away and fetch a fresh one.`,
              ),
            ]
          : [];
    }
  });
}

function hazardFindings(procedure: Procedure, { conditions, hazards }: Entered): readonly Finding[] {
  const open = hazardsIn(stepsThatMayApply(procedure, conditions)).filter(({ key }) => !hazards.has(key)).length;
  if (open === 0) return [];
  return [
    stop(
      'hazards',
      `${open === 1 ? 'One hazard is' : `${open} hazards are`} not acknowledged yet. Read each one and acknowledge it.`,
    ),
  ];
}
