/** How an order and a schedule of passes are spoken before there is a session: to be listened to against the manual. */
import type { PlannedPass } from '../tightening/passes.ts';
import { toWritten } from '../units/index.ts';
import { count, digits, sayName, sayTorque, sentence } from './say.ts';

/** "Order of the cover: one, seven, four, one zero." */
export function sayOrder(name: string, order: readonly number[]): string {
  return sentence(`order of ${sayName(name)}: ${order.map(count).join(', ')}.`);
}

/** "Pass one of two, 30 per cent: one zero newton metres, from nine to one one." One text for each pass. */
export function sayPasses(passes: readonly PlannedPass[]): readonly string[] {
  return passes.map((pass) => {
    const named = `Pass ${count(pass.index)} of ${count(pass.of)}, ${sayName(pass.name)}`;
    if (pass.target === null) return `${named}.`;
    const [min, max] = [pass.window.min, pass.window.max].map((limit) => digits(toWritten(limit).value));
    return `${named}: ${sayTorque(toWritten(pass.target))}, from ${min} to ${max}.`;
  });
}
