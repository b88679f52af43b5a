/** Who works and who reads back. */
import { said } from './said.ts';

export const people = said('people', {
  whoTakesPart: 'Who takes part',
  mechanic: 'Mechanic',
  whoTakesOver: 'Who takes over',
  takeOver: 'Take over',
  secondPerson: 'Second person',
  nobody: 'nobody',
  whoJoins: 'Who joins as second person',
  join: 'Join',
  leave: 'Leave',
  secondPersonIs: <T>(name: T) => ['Second person ', name],
  nobodyYet: 'nobody yet',
  yourName: 'Your name',
  mechanicIs: (name: string) => `The mechanic is ${name}. Whoever does the work cannot witness it.`,
});
