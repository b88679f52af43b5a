/** Whether a job is prepared: everything that stops it and everything to be warned of, each with what to do. */
import type { Procedure } from '../../procedure/procedure.ts';
import { preparation } from '../../words/preparation.ts';
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
      .map(({ person }) => warn(`microphone/${person}`, preparation.people.notHeard(person))),
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
  return stop('approved data', preparation.dataNotCompared(document, revision, issued));
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
        return [stop(field, preparation.consumable.noExpiry(name))];
      case 'wrong':
        return [stop(field, preparation.wrong(name, typed.why))];
      case 'value':
        return typed.value < day ? [stop(field, preparation.consumable.expired(name, typed.value, day))] : [];
    }
  });
}

function hazardFindings(procedure: Procedure, { conditions, hazards }: Entered): readonly Finding[] {
  const open = hazardsIn(stepsThatMayApply(procedure, conditions)).filter(({ key }) => !hazards.has(key)).length;
  return open === 0 ? [] : [stop('hazards', preparation.hazardsOpen(open))];
}
