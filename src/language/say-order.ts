/** How an order and a schedule of passes are spoken before there is a session: to be listened to against the manual. */
import type { PlannedPass } from '../tightening/passes.ts';
import { toWritten, type Torque } from '../units/index.ts';
import { calls } from '../words/calls.ts';
import { count, digits, sayName, sayTorque, sentence } from './say.ts';

/** "Order of the cover: stud one, stud seven, stud one zero." */
export function sayOrder(name: string, label: string, order: readonly number[]): string {
  return sentence(calls.order(sayName(name), label, order.map(count)));
}

/** "Pass one of two, 30 per cent: one zero newton metres, from nine to one one." One text for each pass. */
export function sayPasses(passes: readonly PlannedPass[]): readonly string[] {
  return passes.map((pass) => {
    const named = [count(pass.index), count(pass.of), sayName(pass.name)] as const;
    if (pass.target === null) return calls.pass(...named);
    const { min, max } = pass.window;
    const said = (limit: Torque): string => digits(toWritten(limit).value);
    return calls.passTo(...named, sayTorque(toWritten(pass.target)), said(min), said(max));
  });
}
