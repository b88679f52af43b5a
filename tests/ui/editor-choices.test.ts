import { afterEach, expect, test } from 'vitest';
import { ORDER_KINDS, SHAPES } from '../../src/procedure/edit/variants.ts';
import { placeWords } from '../../src/procedure/edit/place-words.ts';
import { choicesFrom } from '../../src/ui/editor/choices.ts';
import { draftPlaces } from '../../src/words/draft-places.ts';
import { procedureForm } from '../../src/words/procedure-form.ts';
import { useWords } from '../../src/words/said.ts';

afterEach(() => useWords({}));

test('another language shows its own words for what a file may say; the file keeps to the words of its format', () => {
  const order: typeof procedureForm.order = {
    ...procedureForm.order,
    kinds: { ...procedureForm.order.kinds, spiral: 'spiralig, von der Mitte nach außen' },
  };
  useWords({ procedureForm: { ...procedureForm, order } });
  expect(choicesFrom(ORDER_KINDS, procedureForm.order.kinds)).toContainEqual({
    value: 'spiral',
    label: 'spiralig, von der Mitte nach außen',
  });
});

test('each shape has a name to choose it by', () => {
  expect(choicesFrom(SHAPES, procedureForm.layout.shapes).map(({ label }) => label)).toEqual(SHAPES);
});

test('a place is told in the words of another language, with the names that people gave', () => {
  const other: typeof draftPlaces = {
    ...draftPlaces,
    member: (_, number, quotedName) => `Schritt ${number} ${quotedName}`,
    field: () => 'Text',
  };
  useWords({ draftPlaces: other });
  expect(placeWords({ steps: [{ title: 'Drain' }] }, ['steps', 0, 'text'])).toBe('Schritt 1 "Drain", Text');
});

test('a field of a file that is named like something every object has is told by its name', () => {
  expect(placeWords({ constructor: [1] }, ['constructor', 0])).toBe('constructor 1');
  expect(placeWords({}, ['toString'])).toBe('to string');
});
