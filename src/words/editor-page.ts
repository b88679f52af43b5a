/** The page on which a procedure is written: its frame, and what all fields and lists on it have. */
import { said } from './said.ts';

/** What the lists of a procedure hold. */
export type Member =
  | 'adapter'
  | 'answer'
  | 'condition'
  | 'consumable'
  | 'hazard'
  | 'opening'
  | 'pass'
  | 'pattern'
  | 'seal'
  | 'step'
  | 'tool';

export const editorPage = said('editorPage', {
  opening: 'Opening…',
  elsewhere: <T>(lookAgain: T): (string | T)[] => [
    'A procedure is being written in another window, and there is one draft on this device. Write there; or close that window and look again. Nothing is lost. ',
    lookAgain,
  ],
  lookAgain: 'Look again',
  title: 'Write a procedure',
  manualDecides:
    'The approved manual decides. Type every value from it, and check each against it once more before work.',
  back: 'Back to the start',
  notKept: (why: string) => `This browser does not keep the draft: ${why} Save it as a file.`,
  withoutFields: (parts: readonly string[]) => `Kept as in the file, without fields on this page: ${parts.join(', ')}.`,

  choose: 'choose',
  asInFile: (value: string) => `${value} (as in the file)`,
  unitOf: (field: string) => `Unit of ${field}`,

  numbered: (one: Member, number: number) => `${capital(one)} ${number}`,
  add: (one: Member) => `Add ${/^[aeiou]/u.test(one) ? 'an' : 'a'} ${one}`,
  up: 'Up',
  down: 'Down',
  remove: 'Remove',
  moveUp: (one: Member, number: number) => `Move ${one} ${number} up`,
  moveDown: (one: Member, number: number) => `Move ${one} ${number} down`,
  removeOne: (one: Member, number: number) => `Remove ${one} ${number}`,
});

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
