import type { JSX } from 'solid-js';
import { addCondition, addConsumable, addOpening, addSeal } from '../../procedure/edit/things.ts';
import { lines } from '../../procedure/edit/typed.ts';
import { ChoiceField, Field, FlagField } from './fields.tsx';
import { Members } from './members.tsx';

/** What is asked about the unit, opened, sealed and used up. */
export function StockSection(): JSX.Element {
  return (
    <section aria-labelledby="stock">
      <h2 id="stock">Conditions, openings, seals and consumables</h2>
      <Members list={['conditions']} one="Condition" onAdd={addCondition}>
        {(path) => <Field label="Question about the unit, answered yes or no" path={[...path, 'question']} />}
      </Members>
      <Members list={['openings']} one="Opening" onAdd={addOpening}>
        {(path) => (
          <div class="grid">
            <Field label="Name of the opening" path={[...path, 'name']} />
            <ChoiceField label="Closed with a" path={[...path, 'closure']} choices={['cap', 'plug']} />
          </div>
        )}
      </Members>
      <Members list={['seals']} one="Seal" onAdd={addSeal}>
        {(path) => (
          <div class="grid">
            <Field label="Name of the seal" path={[...path, 'name']} />
            <Field label="Part number of the seal" path={[...path, 'partNumber']} />
            <Field label="Coated with" path={[...path, 'fluid']} />
            <ChoiceField label="Used again" path={[...path, 'reuse']} choices={['never', 'if it passes inspection']} />
            <Field label="What to look for, a line each" path={[...path, 'criteria']} notation={lines} lines={3} />
          </div>
        )}
      </Members>
      <Members list={['consumables']} one="Consumable" onAdd={addConsumable}>
        {(path) => (
          <div class="grid">
            <Field label="Name of the consumable" path={[...path, 'name']} />
            <FlagField label="It has a day of expiry" path={[...path, 'expires']} />
          </div>
        )}
      </Members>
    </section>
  );
}
