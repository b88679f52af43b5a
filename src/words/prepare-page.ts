/** The page before the work: who, by what data, with what; what stops the work and what is only warned of. */
import { said } from './said.ts';

export const preparePage = said('preparePage', {
  cannotBeRead: 'The procedure that was being prepared cannot be read. Open its file again.',
  title: (procedure: string) => `Prepare: ${procedure}`,
  invented: 'Demonstration: all values are invented',
  back: 'Back to the start (nothing is lost)',
  microphone: 'Microphone',

  stops: 'Stops the work:',
  warns: 'Warning:',
  cannotBegin: 'The work cannot begin yet. Each line below leads to what is missing.',
  notWritten: (why: string) => `The session could not be written to this device: ${why}`,
  standing: (stops: number, warnings: number) => {
    if (stops === 0) return warnings === 0 ? 'All is ready' : `Ready, with ${warningsOf(warnings)}`;
    const stopping = stops === 1 ? 'One thing stops the work' : `${stops} things stop the work`;
    return warnings === 0
      ? stopping
      : `${stopping}, and there ${warnings === 1 ? 'is' : 'are'} ${warningsOf(warnings)}`;
  },
  begin: 'Begin the work',
  beginInSpite: (warnings: number) => `Begin the work despite ${warningsOf(warnings)}`,

  people: {
    title: 'People',
    needs: (persons: number) => `The procedure needs ${persons}.`,
    needsUnknown: 'The procedure does not say how many it needs.',
    mechanic: 'Mechanic: does the work',
    second: 'Second person: reads back and witnesses',
    helpers: 'Helpers, with commas between',
  },
  data: {
    title: 'Approved data',
    document: 'Document',
    revision: 'Revision',
    issued: 'Issued',
    notStated: 'not stated',
    isCurrent: 'I compared them with the register: this is the current approved data.',
  },
  unit: {
    title: 'The unit',
    answers: { yes: 'Yes', no: 'No', later: 'Not known yet: ask in the work' },
  },
  tools: {
    title: 'Tools',
    types: { indicating: 'indicating', setting: 'setting' },
    facts: (tool: ToolFacts) =>
      [
        tool.id,
        tool.type,
        `${tool.from} to ${tool.to}`,
        ...(tool.class === undefined ? [] : [`class ${tool.class}`]),
        ...(tool.maximumError === undefined ? [] : [`±${tool.maximumError} %`]),
        tool.calibrationDue === undefined
          ? 'no calibration date in the file'
          : `calibration due by the file ${tool.calibrationDue}`,
      ].join(', '),
    uses: (uses: readonly ToolUse[]) =>
      `Is set or pulled to: ${uses
        .map(({ pass, step, isLeast, value }) => `pass ${pass} of “${step}”${isLeast ? ' at least' : ''} ${value}`)
        .join('; ')}`,
    calibrationDue: (id: string) => `Calibration due, off the label of ${id}`,
  },
  adapters: {
    title: 'Adapters',
    byFile: (length: string, degrees: number) => `By the procedure file ${length}, at ${degrees}°.`,
    measured: 'Measured, middle of the drive to middle of the fastener',
    settings: (isMeasured: boolean, withDrag: boolean, settings: readonly string[]) =>
      `On the wrench, with the ${isMeasured ? 'measured length' : 'length of the file'}${withDrag ? ' and the least drag of a nut' : ''}: ${settings.join('; ')}.`,
  },
  consumables: {
    title: 'Consumables',
    haveReady: (names: readonly string[]) => `Have ready: ${names.join(', ')}.`,
    useBy: (name: string) => `Use by, off the packing of: ${name}`,
  },
  container: {
    title: 'Container',
    mustHold: 'It must hold what drains, with a margin.',
    capacity: 'What the container in place holds, if it is not the one in the file',
  },
  lift: {
    title: 'Lift',
    carriedBy: 'It is carried by',
    handlings: {
      'one person': 'one person',
      'two persons': 'two persons',
      'three persons': 'three persons',
      'sling or hoist': 'sling or hoist',
      'stand or support': 'stand or support',
    },
    by: { procedure: 'by the procedure', equation: 'by the lifting equation' },
    saidBy: (handling: string, by: readonly string[]) => `${handling} (${by.join(', ')})`,
  },
  hazards: {
    title: 'Hazards of the whole job',
    askedAgain: 'Each warning is asked for once more before its step.',
  },
});

const warningsOf = (count: number): string => (count === 1 ? 'one warning' : `${count} warnings`);

/** What the file says of a tool; values with their units, a day as in the file. */
interface ToolFacts {
  readonly id: string;
  readonly type: string;
  readonly from: string;
  readonly to: string;
  readonly class: string | undefined;
  readonly maximumError: number | string | undefined;
  readonly calibrationDue: string | undefined;
}

/** A pass, counted from 1, in which a tool is set or pulled to a value. */
interface ToolUse {
  readonly pass: number;
  readonly step: string;
  readonly isLeast: boolean;
  readonly value: string;
}
