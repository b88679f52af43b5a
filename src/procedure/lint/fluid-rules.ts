/** Rules about openings, ports and the fluid that runs out. */
import { lint } from '../../words/lint.ts';
import { containerCheck } from '../lead-hand.ts';
import type { Procedure } from '../schema.ts';
import { closedIn, openedIn, type Step } from '../steps.ts';
import { isWorkedWith, type Placed, type Rule } from './rule.ts';

const where = ({ steps }: Procedure, touches: (step: Step) => boolean): readonly Placed[] =>
  steps.map((step, index) => ({ step, index })).filter(({ step }) => touches(step));

export const openedNeverClosed: Rule = (procedure) =>
  procedure.openings.flatMap(({ id, name, closure }) => {
    const closings = where(procedure, (step) => closedIn(step).includes(id));
    return where(procedure, (step) => openedIn(step).includes(id))
      .filter((open) => !closings.some((close) => close.index >= open.index && isWorkedWith(close.step, open.step)))
      .map(({ index }) => ({
        path: `steps.${index}`,
        message: lint.neverClosed(name, closure),
      }));
  });

export const closedNeverOpened: Rule = (procedure) =>
  procedure.openings.flatMap(({ id, name }) => {
    const openings = where(procedure, (step) => openedIn(step).includes(id));
    return where(procedure, (step) => closedIn(step).includes(id))
      .filter((close) => !openings.some((open) => open.index <= close.index && isWorkedWith(open.step, close.step)))
      .map(({ index }) => ({
        path: `steps.${index}`,
        message: lint.neverOpened(name),
      }));
  });

export const openingNeverOpened: Rule = (procedure) =>
  procedure.openings.flatMap(({ id, name }, i) =>
    where(procedure, (step) => openedIn(step).includes(id)).length === 0
      ? [{ path: `openings.${i}`, message: lint.notOpened(name) }]
      : [],
  );

export const portsNotKeptUp: Rule = ({ component: { retains, portsUp } }) =>
  retains !== undefined && retains.value > 0 && portsUp.length === 0
    ? [{ path: 'component.portsUp', message: lint.portsNotKeptUp }]
    : [];

export const drainedVolumeMissing: Rule = ({ container, component: { drains } }) =>
  container !== undefined && drains === undefined
    ? [{ path: 'component.drains', message: lint.drainedVolumeMissing }]
    : [];

export const containerTooSmall: Rule = (procedure) => {
  const check = containerCheck(procedure);
  return check === null || check.isEnough ? [] : [{ path: 'container.capacity', message: check.sentence }];
};
