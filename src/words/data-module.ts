/** A data module (S1000D): why it is not read, and what a draft says that is made of it. */
import { said } from './said.ts';

const wanted = 'expected a procedural data module of issue 4 or later, with dmodule, content and procedure.';

export const dataModule = said('dataModule', {
  tooLong: (characters: number, most: number) => `It has ${characters} characters; at most ${most} are read.`,
  notUtf8: (line: number) =>
    `Line ${line}: it holds a character that is not in UTF-8, so a unit or a word would be lost; save it in UTF-8.`,
  entities: (line: number) =>
    `Line ${line}: the document declares entities. They could fetch files or grow without end, so such a file is not read; save it with its entities written out.`,
  tooManyElements: (line: number, most: number) => `Line ${line}: it has more than ${most} elements.`,
  tooDeep: (line: number, most: number) => `Line ${line}: it is nested more than ${most} levels deep.`,
  noElement: 'It holds no element.',
  notXmlAt: (line: number, column: number, why: string) =>
    `Line ${line}, column ${column}: it is not well-formed XML: ${why}`,
  otherRoot: (element: string) => `It begins with <${element}>: ${wanted}`,
  otherContent: (element: string | undefined) =>
    `Its content is ${element === undefined ? 'empty' : `<${element}>`}: ${wanted}`,
  noStep: 'Its procedure holds no step: expected mainProcedure with proceduralStep.',

  requiredBefore: 'Required condition',
  requiredAfter: 'Required after the job',
  conditionIsSo: 'Go on.',
  conditionIsNot: 'Put it right first.',
  equipment: 'Support equipment',
  layOutEquipment: 'Lay out the support equipment.',
  comesUnder: (applicability: string) => `Does this apply to the unit: ${applicability}?`,
  unnamed: 'unnamed',
  withPartNumber: (item: string, partNumber: string) => `${item}, part number ${partNumber}`,
  window: (min: string, max: string) => `${min} to ${max}`,
  atLeast: (min: string) => `at least ${min}`,
  atMost: (max: string) => `at most ${max}`,
});
