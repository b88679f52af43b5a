/** A value entered by large keys, or by one or two switches. */
import { said } from './said.ts';

export const valueKeys = said('valueKeys', {
  nothingYet: '–',
  valueThatYouRead: 'Value that you read',
  valueInUnit: (unit: string) => `Value that you read, in ${unit}`,
  witnessReads: 'Witness reads',
  deleteKey: 'Delete',
  pointKey: 'Point',

  choices: 'Choices by switch',
  pressGoesOn: 'A press goes on, or shows what may be done.',
  value: 'Value',
  howCounted: 'One switch counts up, the other takes. Taken without counting, the value is read.',
  oneToFive: '1 to 5',
  sixToNought: '6 to 0',
  otherKeys: 'point, read it, delete',
  point: 'point',
  readIt: 'read it',
  delete: 'delete',
  leave: 'leave',
  enterValue: 'enter the value',
  nothing: 'nothing',
  otherRows: 'other rows',
});
