import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { at, listAt, put, wordsAt } from '../../../src/procedure/edit/draft.ts';
import { findingsOf } from '../../../src/procedure/edit/findings.ts';
import { fromDataModule } from '../../../src/procedure/import/data-module.ts';
import { MODULE, imported, stepTitled, leftLines } from './pump-cover-module.ts';

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
    expect(draft.conditions).toMatchObject([{ question: 'Does this apply to the unit: units with a heater jacket?' }]);
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
