import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  at,
  type Draft,
  fileText,
  insert,
  isFields,
  isList,
  type Json,
  listAt,
  move,
  type Path,
  put,
  take,
} from '../../../src/procedure/edit/draft.ts';
import { findingsOf } from '../../../src/procedure/edit/findings.ts';
import { addPattern, addStep, addTool, retitle, startingDraft } from '../../../src/procedure/edit/things.ts';
import { lines, type Notation, whole, wholeNumbers, words } from '../../../src/procedure/edit/typed.ts';
import { passOfKind, STEP_KINDS, stepOfKind } from '../../../src/procedure/edit/variants.ts';
import { readProcedure } from '../../../src/procedure/procedure.ts';
import { DEMOS, demoJson, demoText } from '../demo-files.ts';

const demoDraft = (name: (typeof DEMOS)[number]): Draft => demoJson(name) as Draft;

/** Any procedure: a demonstration with some members taken, moved and repeated, sound or not. */
const drafts: fc.Arbitrary<Draft> = fc
  .record({
    name: fc.constantFrom(...DEMOS),
    edits: fc.array(fc.record({ pick: fc.nat(), by: fc.integer({ min: -3, max: 3 }) }), { maxLength: 4 }),
  })
  .map(({ name, edits }) =>
    edits.reduce<Draft>((draft, { pick, by }) => {
      const places = [...pathsIn(draft)];
      const path = places[pick % places.length] ?? [];
      const last = path.at(-1);
      if (typeof last !== 'number') return take(draft, path);
      const list = path.slice(0, -1);
      return by === 0 ? insert(draft, list, at(draft, path) ?? null, last) : move(draft, list, last, by);
    }, demoDraft(name)),
  );

function* pathsIn(json: Json, path: Path = []): Generator<Path> {
  if (path.length > 0) yield path;
  if (isList(json)) for (const [i, item] of json.entries()) yield* pathsIn(item, [...path, i]);
  else if (isFields(json)) for (const [name, item] of Object.entries(json)) yield* pathsIn(item, [...path, name]);
}

describe('a file that is opened and saved without a change', () => {
  it.each(DEMOS)('%s is the same file', (name) => {
    expect(JSON.parse(fileText(demoDraft(name)))).toEqual(JSON.parse(demoText(name)));
  });

  const notations: readonly Notation[] = [words, whole, wholeNumbers, lines];
  it('says the same after every field was given what it shows: nothing is lost, nothing made up', () => {
    fc.assert(
      fc.property(drafts, fc.constantFrom(...notations), (draft, notation) => {
        for (const path of pathsIn(draft)) {
          const before = at(draft, path);
          // Objects and lists of objects have no field of their own; texts of several notations have one each.
          const typed = notation.read(notation.show(before));
          const isShown =
            typeof before === 'string' ||
            (typeof before === 'number' && notation === whole) ||
            (isList(before) &&
              before.length > 0 &&
              before.every((each) => typeof each === 'number') &&
              notation === wholeNumbers) ||
            (isList(before) &&
              before.length > 0 &&
              before.every((each) => typeof each === 'string') &&
              notation === lines);
          // A text is shown in the notation of its field: what looks like a number is one only in a field for numbers.
          if (!isShown || (typeof before === 'string' && notation !== words)) continue;
          expect(put(draft, path, typed ?? ''), path.join('.')).toEqual(draft);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('keeps what the page has no field for while something else is edited', () => {
    fc.assert(
      fc.property(drafts, fc.nat(), (draft, pick) => {
        const places = [...pathsIn(draft)];
        const path = places[pick % places.length] ?? [];
        const changed = put(draft, path, 'changed');
        for (const other of places) {
          const isTouched = other.every((key, i) => i >= path.length || key === path[i]);
          if (!isTouched) expect(at(changed, other)).toBe(at(draft, other));
        }
      }),
      { numRuns: 100 },
    );
  });
});

describe('edits', () => {
  it('leave the draft before them as it was', () => {
    const before = demoText(DEMOS[0] ?? 'ropeway-oil-cooler');
    const draft = demoDraft('ropeway-oil-cooler');
    move(take(put(draft, ['title'], 'x'), ['steps', 0]), ['steps'], 1, 2);
    expect(JSON.parse(fileText(draft))).toEqual(JSON.parse(before));
  });

  it('take the object with its last field, but a member of a list only when it is asked for', () => {
    const draft = put({ list: [{ a: 1 }] }, ['outer', 'inner', 'value'], '1');
    expect(take(draft, ['outer', 'inner', 'value'])).toEqual({ list: [{ a: 1 }] });
    expect(take(draft, ['list', 0, 'a'])).toMatchObject({ list: [{}] });
    expect(take(draft, ['list', 0])).toMatchObject({ list: [] });
  });

  it('move a member as far as the list goes', () => {
    const draft: Draft = { steps: ['a', 'b', 'c'] };
    expect(move(draft, ['steps'], 0, 9)).toEqual({ steps: ['b', 'c', 'a'] });
    expect(move(draft, ['steps'], 1, -1)).toEqual({ steps: ['b', 'a', 'c'] });
    expect(move(draft, ['steps'], 0, -1)).toBe(draft);
  });

  it('take a name such as __proto__ as any other', () => {
    const draft = put({}, ['__proto__', 'polluted'], true);
    expect(Object.hasOwn(draft, '__proto__')).toBe(true);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('what is typed and does not fit', () => {
  it.each([
    [whole, '12x'],
    [whole, '99999999999'],
    [wholeNumbers, '1, 7, four'],
  ])('stays as it was typed, and is a fault at its place', (notation, typed) => {
    expect(notation.read(typed)).toBe(typed);
    const draft = put(demoDraft('ropeway-oil-cooler'), ['patterns', 0, 'layout', 'count'], notation.read(typed));
    expect(findingsOf(draft).faults.map(({ path }) => path)).toEqual(['patterns.0.layout.count']);
  });

  it('is read where it does: numbers with commas or spaces, words without the spaces around', () => {
    expect(wholeNumbers.read(' 1,7 4;10 ')).toEqual([1, 7, 4, 10]);
    expect(words.read('  M8 ')).toBe('M8');
    expect(lines.read('one\n\n two ')).toEqual(['one', 'two']);
    expect(whole.read(' ')).toBeNull();
  });
});

describe('a new procedure', () => {
  it('asks for what the manual says, each at the place where it is filled in', () => {
    expect(
      findingsOf(startingDraft())
        .faults.map(({ path }) => path)
        .sort(),
    ).toEqual([
      'component.dryMass',
      'component.name',
      'patterns.0.name',
      'source.document',
      'source.revision',
      'steps.0.text',
      'steps.0.title',
      'title',
      'tools.0.name',
      'tools.0.range.max',
      'tools.0.range.min',
      'tools.0.resolution',
      'tools.0.type',
    ]);
  });

  it('gives every new thing an id of its own, and the procedure one after its title', () => {
    const draft = addStep(addTool(addPattern(addPattern(startingDraft()))), 'tighten');
    for (const list of ['patterns', 'tools', 'steps']) {
      const ids = listAt(draft, [list]).map((item) => at(item, ['id']));
      expect(new Set(ids).size).toBe(ids.length);
    }
    const titled = retitle(retitle(draft, 'Ölkühler'), 'Ölkühler 2');
    expect(titled.id).toBe('olkuhler-2');
    expect(retitle(put(titled, ['id'], 'own'), 'Else').id).toBe('own');
    expect(retitle(draft, '12').id).toBe('procedure');
  });
});

describe('another kind', () => {
  it('of step keeps what both kinds have, so that no field is left that its kind does not know', () => {
    const draft = demoDraft('ropeway-oil-cooler');
    for (const [i, step] of listAt(draft, ['steps']).entries()) {
      for (const kind of STEP_KINDS) {
        const changed = put(draft, ['steps', i], stepOfKind(kind, step, draft));
        expect(at(changed, ['steps', i, 'hazards'])).toEqual(at(step, ['hazards']));
        const read = readProcedure(changed);
        const unknown = read.kind === 'faulty' ? read.faults.filter(({ message }) => /^unknown/.test(message)) : [];
        expect(unknown).toEqual([]);
      }
    }
  });

  it('of pass keeps its scope', () => {
    const before = { kind: 'percent', name: 'half', percent: '50', only: [1, 2] };
    expect(passOfKind('snug', before)).toEqual({ kind: 'snug', name: 'half', only: [1, 2] });
  });
});
