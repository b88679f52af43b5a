/** Measured adapters: what they change against the length of the file. */
import type { Procedure, Step } from '../../procedure/procedure.ts';
import { convert, length, subtract, valueIn, type Length } from '../../units/index.ts';
import { preparation } from '../../words/preparation.ts';
import { withAdapter } from './as-found.ts';
import { stop, warn, type Finding } from './finding.ts';
import { adaptersIn, isTightening, type NamedAdapter } from './needed.ts';
import { shown, usesOf } from './tools.ts';
import { typedQuantity } from './typed.ts';

/** A difference that is said: about half a per cent of a lever of 200 mm, and what a rule is read to by hand. */
const SAID_FROM = length(1, 'mm');
/** Above this part of the file's length it is another adapter, or a slip of the keyboard. */
const ANOTHER_FROM = 0.5;

export function adapterFindings(
  procedure: Procedure,
  steps: readonly Step[],
  typed: ReadonlyMap<string, string>,
): readonly Finding[] {
  return adaptersIn(procedure, steps).flatMap((adapter): readonly Finding[] => {
    const field = `adapter/${adapter.id}` as const;
    const found = typedQuantity('length', typed.get(adapter.id) ?? '', adapter.length.unit);
    switch (found.kind) {
      case 'nothing':
        return [warn(field, preparation.adapter.notMeasured(adapter.name, inFigures(adapter.length)))];
      case 'wrong':
        return [stop(field, preparation.wrong(adapter.name, found.why))];
      case 'value':
        return measuredFindings(procedure, steps, adapter, found.value);
    }
  });
}

function measuredFindings(
  procedure: Procedure,
  steps: readonly Step[],
  adapter: NamedAdapter,
  measured: Length,
): readonly Finding[] {
  const field = `adapter/${adapter.id}` as const;
  const by = Math.abs(valueIn(subtract(measured, adapter.length), 'mm'));
  const facts = [adapter.name, inFigures(measured), inFigures(adapter.length)] as const;
  if (by > ANOTHER_FROM * valueIn(adapter.length, 'mm') && by > SAID_FROM.value) {
    return [stop(field, preparation.adapter.another(...facts))];
  }
  if (withAdapter(procedure, adapter.id, measured) === null) {
    return [stop(field, preparation.adapter.noSetting(...facts))];
  }
  if (by <= SAID_FROM.value) return [];
  const changes = settingChanges(procedure, steps, adapter.id, measured).map(changeInWords);
  return [warn(field, preparation.adapter.differs(...facts, Number(by.toFixed(1)), changes))];
}

/** What the wrench is set to in one pass, with the length of the file and with the measured one. */
export interface SettingChange {
  readonly place: string;
  readonly filed: string;
  readonly measured: string;
}

/** The settings of every pass that an adapter is used in. Running torque is not in them: it is measured at each nut. */
export function settingChanges(
  procedure: Procedure,
  steps: readonly Step[],
  adapter: string,
  measured: Length,
): readonly SettingChange[] {
  const found = withAdapter(procedure, adapter, measured);
  if (found === null) return [];
  const using = steps.filter(isTightening).filter((step) => step.adapter === adapter);
  return using.flatMap((step) => {
    const tool = procedure.tools.find(({ id }) => id === step.tool);
    if (!tool) return [];
    const { unit } = tool.range.max;
    const settings = (as: Procedure) => usesOf(as, [step], tool).map(({ atWrench }) => convert(atWrench.target, unit));
    const now = settings(found);
    const filed = settings(procedure);
    return usesOf(found, [step], tool).flatMap(({ pass }, i) => {
      const [before, after] = [filed[i], now[i]];
      return before && after
        ? [
            {
              place: preparation.adapter.inPass(pass.index),
              filed: shown(tenths(before)),
              measured: shown(tenths(after)),
            },
          ]
        : [];
    });
  });
}

const changeInWords = ({ place, filed, measured }: SettingChange): string =>
  preparation.adapter.change(place, measured, filed);

/** A tenth is finer than any mark of a wrench. */
const tenths = <T extends { readonly value: number }>(torque: T): T => ({
  ...torque,
  value: Number(torque.value.toFixed(1)),
});

const inFigures = ({ value, unit }: Length): string => `${Number(value.toPrecision(6))} ${unit}`;
