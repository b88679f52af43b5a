import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { at, type Draft, type Json, listAt, put, wordsAt } from '../../../src/procedure/edit/draft.ts';
import { findingsOf } from '../../../src/procedure/edit/findings.ts';
import { fromDataModule, type LeftOut } from '../../../src/procedure/import/data-module.ts';
import { LARGEST_XML } from '../../../src/procedure/import/xml.ts';

// Element names as in the public sample of S1000D issue 4.1; quantities and step attributes from memory. The module is
// in our own words and all of it is invented.
const MODULE = readFileSync(path.join(import.meta.dirname, 'pump-cover-module.xml'), 'utf8');

function imported(xml: string): { readonly draft: Draft; readonly leftOut: readonly LeftOut[] } {
  const found = fromDataModule(xml);
  if (found.kind === 'refused') throw new Error(found.why);
  return found;
}
const refusal = (xml: string): string => {
  const found = fromDataModule(xml);
  return found.kind === 'refused' ? found.why : 'imported';
};
const stepTitled = (draft: Draft, title: RegExp): Json | undefined =>
  listAt(draft, ['steps']).find((step) => title.test(wordsAt(step, ['title'])));
const leftLines = (xml: string): readonly string[] =>
  imported(xml).leftOut.map(({ place, what }) => `${place}: ${what}`);

describe('a procedural data module', () => {
  const { draft, leftOut } = imported(MODULE);

  it('gives title, source, revision, date and people', () => {
    expect(draft).toMatchObject({
      title: 'Invented pump cover: Install procedure',
      source: { document: 'INVENTED-A-29-10-00-00A-720A-A', revision: '003', issued: '2026-04-09' },
      persons: 2,
      component: { name: 'Invented pump cover' },
    });
  });

  it('gives all its steps in order, sub-steps by the number the module nests them with', () => {
    expect(listAt(draft, ['steps']).map((step) => at(step, ['title']))).toEqual([
      'A1 Required condition',
      'B Support equipment',
      '1 Support the cover on the Trestle',
      '2.1 Fit the cover',
      '2.2 Fit the cover',
      '2.3 Fit the cover',
      '2.4 Fit the cover',
      'Z1 Required after the job',
    ]);
  });

  it('gives every warning, caution and note before the step it belongs to, the gravest first', () => {
    expect(stepTitled(draft, /^A1/)).toMatchObject({
      kind: 'check',
      text: 'The drive is locked and tagged.',
      hazards: [
        { signal: 'warning', consequence: 'person', text: 'The oil inside may be hot.' },
        { signal: 'caution', consequence: 'equipment', text: 'A scored face leaks.' },
      ],
      notes: ['Work on a dry bench.'],
    });
    expect(stepTitled(draft, /^1 /)).toMatchObject({ hazards: [{ text: 'The cover weighs 18.5 kg.' }] });
    // A heading has no step of its own: its caution is told before the first step under it, and only there.
    expect(stepTitled(draft, /^2\.1/)).toMatchObject({
      hazards: [{ text: 'A cover on one screw strips its thread.' }],
      notes: ['Count the washers.'],
    });
    expect(at(stepTitled(draft, /^2\.2/), ['hazards'])).toBeUndefined();
  });

  it('gives a torque with its tolerance as a pass: 24.5 ± 1.5 is 23 to 26', () => {
    expect(stepTitled(draft, /^2\.3/)).toMatchObject({
      kind: 'tighten',
      text: 'Tighten the screws to 24.5 N·m ± 1.5.',
      tool: 'torque-wrench-5-to-60-n-m',
      passes: [
        {
          kind: 'torque',
          target: { value: '24.5', unit: 'N·m' },
          window: { min: { value: '23', unit: 'N·m' }, max: { value: '26', unit: 'N·m' } },
        },
      ],
    });
  });

  it('gives equipment, supplies and spares with their quantities and part numbers', () => {
    expect(draft.tools).toMatchObject([{ name: 'Torque wrench, 5 to 60 N·m' }]);
    expect(stepTitled(draft, /^B /)).toMatchObject({ notes: ['Trestle, 2'] });
    expect(draft.consumables).toMatchObject([{ name: 'Invented grease, 20 g' }, { name: 'Lock washer, 8' }]);
    expect(draft.seals).toMatchObject([{ name: 'O-ring of the cover', partNumber: 'INV-OR-7', reuse: 'never' }]);
  });

  it('writes links out by name, and lists and emphasis as plain words', () => {
    expect(stepTitled(draft, /^2\.1/)).toMatchObject({
      text: 'Coat the O-ring of the cover thinly with Invented grease.',
    });
    expect(stepTitled(draft, /^2\.4/)).toMatchObject({
      text: 'Make sure that the heater jacket is free of the cover: above; below.',
    });
    expect(stepTitled(draft, /^Z1/)).toMatchObject({ kind: 'check', text: 'All four caps are back.' });
  });

  it('asks whether a step applies', () => {
    expect(draft.conditions).toMatchObject([{ question: 'Does this unit come under: units with a heater jacket?' }]);
    expect(stepTitled(draft, /^2\.4/)).toMatchObject({
      applies: { condition: 'units-with-a-heater-jacket', is: true },
    });
  });

  it('names all that is left out, with its line and step', () => {
    expect(leftOut.map(({ place, what }) => `${place}: ${what}`)).toEqual([
      'line 21: <security> is not taken over: 01',
      'line 22: <responsiblePartnerCompany> is not taken over: Nobody Ltd, invented',
      'line 23: <qualityAssurance> is not taken over',
      'line 27: <refs> is not taken over: INVENTED-A-29-10-00-00A-520A-A',
      'line 39: category, skill, trade and time of a person are not taken over: Mechanic, pumps',
      'line 40: category, skill, trade and time of a person are not taken over: Inspector',
      'line 44: type, range and marks of the tool "Torque wrench, 5 to 60 N·m" are not in the module: fill them in',
      'line 78, step 1: the figure "Where the trestle stands" is not taken over',
      'line 89, step 2.3: which fasteners are tightened is not in the module: draw the pattern and choose it',
      'line 93, step 2.4: the independent check "ic1" is not taken over: look up whom the code asks for, and add a witness step',
    ]);
  });

  it('makes nothing up: the draft asks for exactly what the module does not say', () => {
    expect(findingsOf(draft).faults.map(({ path: place }) => place)).toEqual([
      'component.dryMass',
      'tools.0.type',
      'tools.0.range.min',
      'tools.0.range.max',
      'tools.0.resolution',
      'steps.5.pattern',
    ]);
  });
});

describe('a number', () => {
  const quantity = (inside: string): string =>
    MODULE.replace(/<quantityValue\s+quantityUnitOfMeasure="N\.m">24\.5<\/quantityValue>/, inside);
  const value = (text: string, unit = 'N.m'): string =>
    `<quantityValue quantityUnitOfMeasure="${unit}">${text}</quantityValue>`;

  it.each(['24,5', '1,000', '1 000', "1'000", '1.000,5', '24.5e0', '0x18', ''])(
    'that is no plain decimal stays as it is written, is named, and is a fault of the draft: "%s"',
    (text) => {
      const { draft, leftOut } = imported(quantity(value(text)));
      const step = stepTitled(draft, /^2\.3/);
      expect(at(step, ['passes', 0, 'target', 'value'])).toBe(text);
      expect(at(step, ['passes', 0, 'window'])).toBeUndefined();
      expect(leftOut.some(({ place, what }) => place === 'line 89, step 2.3' && what.includes(`"${text}"`))).toBe(true);
      expect(findingsOf(draft).faults.map(({ path: place }) => place)).toContain('steps.5.passes.0.target.value');
    },
  );

  it('with a decimal comma in its tolerance gives no window', () => {
    const { draft } = imported(MODULE.replace('>1.5<', '>1,5<'));
    expect(at(stepTitled(draft, /^2\.3/), ['passes', 0])).toEqual({
      kind: 'torque',
      target: { value: '24.5', unit: 'N·m' },
    });
  });

  it.each([
    ['in-lb', 'lbf·in'],
    ['lbf.ft', 'lbf·ft'],
    ['Nm', 'N·m'],
  ])('in %s is a torque in %s', (unit, known) => {
    const { draft } = imported(quantity(value('24.5', unit)));
    expect(at(stepTitled(draft, /^2\.3/), ['passes', 0, 'target', 'unit'])).toBe(known);
  });

  it('in a unit that is no torque stays in the text', () => {
    const { draft } = imported(quantity(value('24.5', 'bar')));
    expect(stepTitled(draft, /^2\.3/)).toMatchObject({ kind: 'do', text: 'Tighten the screws to 24.5 bar ± 1.5.' });
  });

  it('given as a range has its middle as target', () => {
    const xml = MODULE.replace(
      /<quantityGroup><quantityValue\s+quantityUnitOfMeasure="N\.m">[^]*?<\/quantityGroup>/,
      (_) => {
        const limit = (type: string, text: string) =>
          `<quantityGroup quantityGroupType="${type}">${value(text)}</quantityGroup>`;
        return limit('minimum', '20') + limit('maximum', '25');
      },
    );
    expect(stepTitled(imported(xml).draft, /^2\.3/)).toMatchObject({
      text: 'Tighten the screws to 20 to 25 N·m.',
      passes: [{ target: { value: '22.5' }, window: { min: { value: '20' }, max: { value: '25' } } }],
    });
  });

  it('with two tolerances has a window that is wider on one side', () => {
    const xml = MODULE.replace(
      /<quantityTolerance\s+quantityToleranceType="plusorminus">1\.5<\/quantityTolerance>/,
      (_) =>
        ['plus">2', 'minus">0.5']
          .map((each) => `<quantityTolerance quantityToleranceType="${each}</quantityTolerance>`)
          .join(''),
    );
    expect(stepTitled(imported(xml).draft, /^2\.3/)).toMatchObject({
      text: 'Tighten the screws to 24.5 N·m + 2 − 0.5.',
      passes: [{ window: { min: { value: '24' }, max: { value: '26.5' } } }],
    });
  });

  const tolerances = (...all: readonly (readonly [type: string, text: string])[]): string =>
    MODULE.replace(/<quantityTolerance\s+quantityToleranceType="plusorminus">1\.5<\/quantityTolerance>/, (_) =>
      all
        .map(([type, text]) => `<quantityTolerance quantityToleranceType="${type}">${text}</quantityTolerance>`)
        .join(''),
    );

  it.each(['±1.5', '+/- 1.5', '+1.5'])('with a tolerance written as "%s" has its window', (text) => {
    expect(stepTitled(imported(tolerances(['plusorminus', text])).draft, /^2\.3/)).toMatchObject({
      text: 'Tighten the screws to 24.5 N·m ± 1.5.',
      passes: [{ window: { min: { value: '23' }, max: { value: '26' } } }],
    });
  });

  it.each([
    ['both sides', tolerances(['plusorminus', '-1.5'])],
    ['the side above', tolerances(['plus', '-1.5'], ['minus', '1.5'])],
  ])('with a minus before the tolerance of %s gives no window, and says so', (_, xml) => {
    const { draft } = imported(xml);
    expect(at(stepTitled(draft, /^2\.3/), ['passes', 0, 'window'])).toBeUndefined();
    expect(leftLines(xml).some((line) => line.includes('"-1.5" is no plain number'))).toBe(true);
  });

  it.each([
    ['of a type that is not known', `</quantityGroup><quantityGroup quantityGroupType="typical">${value('24')}`],
    ['a second time in its group', value('24.5') + value('217', 'lbf.in')],
    ['a second time in a group of its own', `${value('24.5')}</quantityGroup><quantityGroup>${value('30')}`],
  ])('that stands %s is kept with its unit and named; no torque is taken from it', (_, inside) => {
    const xml = quantity(inside);
    const step = stepTitled(imported(xml).draft, /^2\.3/);
    expect(step).toMatchObject({ kind: 'do' });
    for (const [, text, unit] of inside.matchAll(/Measure="([^"]*)">([\d.]+)/g)) {
      expect(wordsAt(step, ['text'])).toContain(`${unit ?? ''} ${text === 'N.m' ? 'N·m' : 'lbf·in'}`);
    }
    expect(leftLines(xml).some((line) => line.includes('more than one value'))).toBe(true);
  });

  it.each([
    ['in words', '<quantity>24.5 N.m</quantity>', '24.5 N.m'],
    [
      'without a unit',
      '<quantity><quantityGroup><quantityValue>24.5</quantityValue></quantityGroup></quantity>',
      '24.5',
    ],
  ])('%s may be a torque: it is named', (_, written, words) => {
    const xml = MODULE.replace(
      /<quantity><quantityGroup><quantityValue\s+quantityUnitOfMeasure="N\.m">[^]*?<\/quantity>/,
      written,
    );
    expect(stepTitled(imported(xml).draft, /^2\.3/)).toMatchObject({ kind: 'do' });
    expect(leftLines(xml).some((line) => line.includes(`"${words}" has no unit`))).toBe(true);
  });
});

describe('a file that cannot be read is refused in words', () => {
  it.each([
    [
      'a tag that is not closed',
      MODULE.replace('</mainProcedure>', ''),
      /^Line \d+, column \d+: it is not well-formed XML: /,
    ],
    ['half a file', MODULE.slice(0, MODULE.length / 2), /not well-formed XML/],
    [
      'another encoding than UTF-8',
      new TextDecoder().decode(Buffer.from(MODULE.replace('N.m', 'N\u00B7m'), 'latin1')),
      /^Line \d+: it holds a character that is not in UTF-8/,
    ],
    ['no XML', 'torque the ring', /^Line 1, column \d+: it is not well-formed XML/],
    ['nothing', '', /not well-formed XML/],
    [
      'an older module',
      '<dmodule><content><proced/></content></dmodule>',
      /<proced>: expected a procedural data module/,
    ],
    ['a descriptive module', '<dmodule><content><description/></content></dmodule>', /Its content is <description>/],
    ['a web page', '<html/>', /It begins with <html>/],
    ['no step', MODULE.replace(/<mainProcedure>[^]*<\/mainProcedure>/, '<mainProcedure/>'), /holds no step/],
    ['too large a file', `${MODULE}${' '.repeat(LARGEST_XML)}`, /characters; at most/],
    ['endless nesting', '<a>'.repeat(100_000), /nested more than 64 levels deep/],
    ['endless elements', `<a>${'<b/>'.repeat(100_001)}</a>`, /more than 100000 elements/],
  ])('%s', (_, xml, words) => {
    expect(refusal(xml)).toMatch(words);
  });

  it('a broken module is named by its line', () => {
    const lines = MODULE.split('\n');
    const at80 = lines.map((line, i) => (i === 79 ? `${line}</title>` : line)).join('\n');
    expect(refusal(at80)).toMatch(/^Line 80, /);
  });
});

describe('entities', () => {
  const withDoctype = (subset: string, text: string): string =>
    MODULE.replace('<dmodule>', `<!DOCTYPE dmodule [${subset}]>\n<dmodule>`).replace('A scored face leaks.', text);

  it.each([
    ['of a file (XXE)', '<!ENTITY x SYSTEM "file:///etc/passwd">', '&x;'],
    ['of an address', '<!ENTITY x PUBLIC "p" "http://localhost/x">', '&x;'],
    ['of parameters', '<!ENTITY % p SYSTEM "http://localhost/x.dtd"> %p;', ''],
    [
      'that grow without end (billion laughs)',
      `<!ENTITY l0 "lol">${Array.from({ length: 9 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`).join('')}`,
      '&l9;',
    ],
    ['that are declared and not used', '<!ENTITY x "y">', ''],
    ['that hide behind a picture', '<!ENTITY x "a NDATA b"><!ENTITY p SYSTEM "p.cgm" NDATA cgm>', '&x;'],
  ])('%s are refused', (_, subset, text) => {
    expect(refusal(withDoctype(subset, text))).toMatch(/^Line \d+: the document declares entities/);
  });

  it('that nobody declared are refused as well', () => {
    expect(refusal(withDoctype('', '&boom;'))).toMatch(/not well-formed XML: Named entity/);
  });

  it('of pictures are let pass: they cannot be put into text', () => {
    const pictures = '<!NOTATION cgm SYSTEM "cgm"><!ENTITY ICN-INVENTED-1 SYSTEM "p.cgm" NDATA cgm>';
    expect(imported(withDoctype(pictures, 'x')).draft.title).toBe('Invented pump cover: Install procedure');
    expect(refusal(withDoctype(pictures, '&ICN-INVENTED-1;'))).toMatch(/Named entity/);
  });

  it('of XML itself are read', () => {
    const { draft } = imported(withDoctype('', 'A &lt;scored&gt; face &amp; edge &#108;eaks.'));
    expect(JSON.stringify(draft)).toContain('A <scored> face & edge leaks.');
  });
});

describe('nothing goes unseen', () => {
  it('a warning that is only referred to is told where the module holds it, and named where it does not', () => {
    const referring = MODULE.replace(
      '<proceduralStep id="stp-1">',
      '<proceduralStep id="stp-1" warningRefs="w1 w2">',
    ).replace('<warning><warningAndCautionPara>The oil', '<warning id="w1"><warningAndCautionPara>The oil');
    expect(stepTitled(imported(referring).draft, /^1 /)).toMatchObject({
      hazards: [{ text: 'The oil inside may be hot.' }, { text: 'The cover weighs 18.5 kg.' }],
    });
    expect(leftLines(referring)).toContain(
      'line 74, step 1: the warning or caution "w2" is not in this module: look it up and add it',
    );
  });

  it('what a step applies to holds for the steps inside it as well', () => {
    const outer = MODULE.replace(
      /<proceduralStep>\s*<title>Fit the cover/,
      '<proceduralStep applicRefId="app-heater"><title>Fit the cover',
    );
    const { draft } = imported(outer);
    const applying = listAt(draft, ['steps']).filter((step) => at(step, ['applies', 'is']) === true);
    expect(applying.map((step) => wordsAt(step, ['id']))).toEqual(['step-2-1', 'step-2-2', 'step-2-3', 'step-2-4']);
    expect(leftLines(outer).join()).toMatch(/step 2\.4: this step and the one around it each apply only to some units/);
  });

  it('two torques in one step are not made into one: the step stays plain work, and it is said', () => {
    const torque =
      '<quantity><quantityGroup><quantityValue quantityUnitOfMeasure="Nm">30</quantityValue></quantityGroup></quantity>';
    const two = MODULE.replace('<para>Tighten the screws to', `<para>Not above ${torque}: tighten the screws to`);
    expect(stepTitled(imported(two).draft, /^2\.3/)).toMatchObject({
      kind: 'do',
      text: 'Not above 30 N·m: tighten the screws to 24.5 N·m ± 1.5.',
    });
    expect(leftLines(two).join()).toMatch(/step 2\.3: two torques stand in one step/);
  });

  it('no word of the procedure is in neither the draft nor the list', () => {
    const whole = `${JSON.stringify(imported(MODULE).draft)}${leftLines(MODULE).join(' ')}`;
    const words = MODULE.slice(MODULE.indexOf('<content>'))
      .replace(/<[^>]*>/g, ' ')
      .split(/[\s.,;:]+/)
      .filter((word) => /\p{L}{2}/u.test(word));
    expect(words.filter((word) => !whole.includes(word) && !/^(?:Z0000|INV-TW-60)$/.test(word))).toEqual([]);
  });

  it('whatever is put into a step is taken over or named', () => {
    const name = fc.constantFrom('table', 'multimedia', 'dmRef', 'sneaky', 'footnote', 'proceduralStepAlts');
    fc.assert(
      fc.property(
        name,
        fc.constantFrom('mainProcedure', 'closeRqmts', 'para', 'preliminaryRqmts', 'procedure'),
        (each, where) => {
          const xml = MODULE.replace(new RegExp(`<${where}>`), `<${where}><${each}>unseen</${each}>`);
          const { draft, leftOut } = imported(xml);
          const before = imported(MODULE).leftOut.length;
          expect(JSON.stringify(draft).includes('unseen') || leftOut.length > before).toBe(true);
        },
      ),
    );
  });

  it('whatever is torn out of a module or put twice, it is read or refused, never anything else', () => {
    fc.assert(
      fc.property(fc.nat(MODULE.length), fc.nat(400), fc.boolean(), (from, length, isTwice) => {
        const piece = isTwice ? MODULE.slice(from, from + length).repeat(2) : '';
        const found = fromDataModule(MODULE.slice(0, from) + piece + MODULE.slice(from + length));
        if (found.kind === 'imported') findingsOf(put(found.draft, ['title'], 'x'));
        else expect(found.why).not.toBe('');
      }),
      { numRuns: 150 },
    );
  });
});

describe('warnings before steps that only some units have', () => {
  const module = (preliminary: string, steps: string): string =>
    `<dmodule><content>
      <referencedApplicGroup><applic id="long"><displayText><simplePara>long body</simplePara></displayText></applic></referencedApplicGroup>
      <procedure>${preliminary}<mainProcedure>${steps}</mainProcedure></procedure>
    </content></dmodule>`;
  const HOT = '<warning><warningAndCautionPara>The body is hot.</warningAndCautionPara></warning>';
  const some = '<proceduralStep applicRefId="long"><para>Take the clamp off.</para></proceduralStep>';
  const every = '<proceduralStep><para>Take the body off.</para></proceduralStep>';
  const told = (xml: string): readonly boolean[] =>
    listAt(imported(xml).draft, ['steps']).map((step) => listAt(step, ['hazards']).length > 0);

  it('are told before each of them, to the first that every unit has', () => {
    expect(told(module('', `<proceduralStep>${HOT}${some}${every}${every}</proceduralStep>`))).toEqual([
      true,
      true,
      false,
    ]);
    const gathered = `<proceduralStep>${some}</proceduralStep>`;
    expect(told(module('', `<proceduralStep>${HOT}${gathered}${every}</proceduralStep>`))).toEqual([true, true]);
    expect(told(module('', `<proceduralStep>${HOT}${some}${some}</proceduralStep>`))).toEqual([true, true]);
  });

  it('are told so where they hold for the whole module', () => {
    const safety = `<preliminaryRqmts><reqSafety><safetyRqmts>${HOT}</safetyRqmts></reqSafety></preliminaryRqmts>`;
    expect(told(module(safety, `${some}${every}${every}`))).toEqual([true, true, false]);
  });
});
