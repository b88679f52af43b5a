/**
 * A procedural data module (S1000D, issues 4 and 5) as a draft of a procedure, with a list of what was left out. What the
 * module does not say stays open in the draft: nothing is made up. Element names are those of the public sample of issue
 * 4.1; those of quantities, and attributes of steps, are from memory.
 */
import { leftOut } from '../../words/left-out.ts';
import { dataModule } from '../../words/data-module.ts';
import { type Draft, insert, type Json, type JsonFields, listAt, put, wordsAt } from '../edit/draft.ts';
import { freshId, idFrom } from '../edit/things.ts';
import { importedStep, type ImportedStep } from './imported-step.ts';
import { type LeftOut, LeftOutList } from './left-out.ts';
import { beforeIn, hazardsById, stepsIn, type StepReading } from './module-steps.ts';
import { codeIn } from './module-text.ts';
import { conditionSteps, neededIn, personsIn } from './preliminary.ts';
import { allIn, elementAt, elementsIn, type Element, plainText, readXml } from './xml.ts';

export type { LeftOut } from './left-out.ts';

export type ImportedModule =
  | { readonly kind: 'imported'; readonly draft: Draft; readonly leftOut: readonly LeftOut[] }
  /** In words for the person. */
  | { readonly kind: 'refused'; readonly why: string };

/** Reads a procedural data module from the text of its file. It never throws. */
export function fromDataModule(xml: string): ImportedModule {
  const read = readXml(xml);
  if (read.kind === 'refused') return read;
  const { root } = read;
  const content = elementAt(root, 'content');
  const procedure = elementAt(content, 'procedure');
  if (root.name !== 'dmodule' || procedure === undefined) return { kind: 'refused', why: noProcedure(root, content) };
  const main = elementAt(procedure, 'mainProcedure');
  if (main === undefined || elementsIn(main, 'proceduralStep').length === 0) {
    return { kind: 'refused', why: dataModule.noStep };
  }
  const left = new LeftOutList();
  const preliminary = elementAt(procedure, 'preliminaryRqmts');
  const { draft: lists, named, tools, equipment } = neededIn(preliminary, left);
  const { draft, conditions } = withConditions(root, lists);
  const reading: StepReading = { left, named, tools, conditions, hazards: hazardsById(root) };
  const after = elementsIn(elementAt(procedure, 'closeRqmts'), 'reqCondGroup');
  const steps = [
    ...conditionSteps(elementsIn(preliminary, 'reqCondGroup'), 'A', dataModule.requiredBefore, reading),
    ...equipmentStep(equipment),
    ...stepsIn(main, reading),
    ...conditionSteps(after, 'Z', dataModule.requiredAfter, reading),
  ];
  const safety = elementAt(preliminary, 'reqSafety', 'safetyRqmts');
  const safe = safety === undefined ? steps : withSafety(steps, safety, reading);
  noteUnread(root, conditions, left);
  const headed = withHeading(draft, root, personsIn(preliminary, left));
  return { kind: 'imported', draft: withSteps(headed, safe), leftOut: left.all() };
}

function noProcedure(root: Element, content: Element | undefined): string {
  if (root.name !== 'dmodule') return dataModule.otherRoot(root.name);
  return dataModule.otherContent(elementsIn(content).find(({ name }) => name !== 'refs')?.name);
}

function withHeading(draft: Draft, root: Element, persons: number | null): Draft {
  const address = elementAt(root, 'identAndStatusSection', 'dmAddress');
  const { techName, infoName } = Object.fromEntries(
    ['techName', 'infoName'].map((name) => [name, plainText(elementAt(address, 'dmAddressItems', 'dmTitle', name))]),
  );
  const title = [techName, infoName].filter(Boolean).join(': ');
  const issue = elementAt(address, 'dmIdent', 'issueInfo')?.attributes;
  const revision = [issue?.issueNumber, issue?.inWork === '00' ? undefined : issue?.inWork].filter(Boolean).join('-');
  const issued = dayOf(elementAt(address, 'dmAddressItems', 'issueDate'));
  const fields: readonly (readonly [readonly string[], Json | null])[] = [
    [['id'], idFrom(title, 'procedure')],
    [['title'], title || null],
    [['source', 'document'], codeIn(address) || null],
    [['source', 'revision'], revision || null],
    [['source', 'issued'], issued],
    [['persons'], persons],
    [['component', 'name'], techName || null],
  ];
  return fields.reduce<Draft>((made, [path, value]) => (value === null ? made : put(made, path, value)), draft);
}

function dayOf(date: Element | undefined): string | null {
  const { year, month, day } = date?.attributes ?? {};
  return year && month && day ? `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}` : null;
}

/** What is laid out before the work and is neither a torque tool nor used up. */
function equipmentStep(equipment: readonly string[]): readonly ImportedStep[] {
  if (equipment.length === 0) return [];
  const { equipment: title, layOutEquipment: text } = dataModule;
  return [importedStep({ number: 'B', title, text, kind: 'do', hazards: [], notes: equipment })];
}

/** What the module says about safety as a whole is told before the first step, whichever that is on the unit. */
function withSafety(steps: readonly ImportedStep[], safety: Element, reading: StepReading): readonly ImportedStep[] {
  const { hazards, notes } = beforeIn(safety, reading);
  const sure = steps.findIndex(({ fields }) => fields.applies === undefined);
  return steps.map(({ id, fields }, i) => {
    if (sure >= 0 && i > sure) return { id, fields };
    const all = [...hazards, ...listAt(fields, ['hazards'])].toSorted((one, other) => gravity(one) - gravity(other));
    const allNotes = [...notes, ...listAt(fields, ['notes'])];
    return {
      id,
      fields: {
        ...fields,
        ...(all.length > 0 ? { hazards: all } : {}),
        ...(allNotes.length > 0 ? { notes: allNotes } : {}),
      },
    };
  });
}

const gravity = (hazard: Json): number => (wordsAt(hazard, ['signal']) === 'warning' ? 0 : 1);

const withSteps = (draft: Draft, steps: readonly ImportedStep[]): Draft =>
  steps.reduce((made, { id, fields }) => {
    const step: JsonFields = { id: freshId(made, ['steps'], id), ...fields };
    return insert(made, ['steps'], step);
  }, draft);

/** Applicability that steps refer to becomes a question about the unit, asked before such a step. */
function withConditions(root: Element, draft: Draft): { draft: Draft; conditions: ReadonlyMap<string, string> } {
  const conditions = new Map<string, string>();
  const referred = new Set(allIn(root, 'proceduralStep').map(({ attributes }) => attributes.applicRefId));
  let made = draft;
  for (const applic of allIn(root, 'applic')) {
    const words = plainText(elementAt(applic, 'displayText'));
    const link = applic.attributes.id;
    if (link === undefined || words === '' || !referred.has(link)) continue;
    const id = freshId(made, ['conditions'], idFrom(words, 'condition'));
    conditions.set(link, id);
    made = insert(made, ['conditions'], { id, question: dataModule.comesUnder(words) });
  }
  return { draft: made, conditions };
}

/** Parts of a module that are read somewhere in this file or beside it, by the element they stand in. */
const READ_IN: Readonly<Partial<Record<string, readonly string[]>>> = {
  dmodule: ['identAndStatusSection', 'content'],
  content: ['procedure', 'referencedApplicGroup'],
  referencedApplicGroup: [],
  procedure: ['preliminaryRqmts', 'mainProcedure', 'closeRqmts'],
  preliminaryRqmts: ['reqCondGroup', 'reqPersons', 'reqSupportEquips', 'reqSupplies', 'reqSpares', 'reqSafety'],
  closeRqmts: ['reqCondGroup'],
  safetyRqmts: ['warning', 'caution', 'note'],
};

/** Everything else is named by its element, so that nothing goes unseen. */
function noteUnread(root: Element, conditions: ReadonlyMap<string, string>, left: LeftOutList): void {
  for (const element of [root, ...allIn(root, ...Object.keys(READ_IN))]) {
    const read = READ_IN[element.name] ?? [];
    for (const child of elementsIn(element)) {
      if (!read.includes(child.name) && !conditions.has(child.attributes.id ?? '')) note(child, left);
    }
  }
  for (const child of elementsIn(elementAt(root, 'identAndStatusSection', 'dmStatus'))) note(child, left);
}

function note(element: Element, left: LeftOutList): void {
  const codes = allIn(element, 'dmRef').map(codeIn).join(', ');
  const words = plainText(element) || codes || Object.values(element.attributes).join(' ');
  const shown = words.length > 60 ? `${words.slice(0, 60)}…` : words;
  left.note(element.line, leftOut.element(element.name, shown));
}
