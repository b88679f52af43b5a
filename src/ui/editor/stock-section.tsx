import type { JSX } from 'solid-js';
import { addCondition, addConsumable, addOpening, addSeal } from '../../procedure/edit/things.ts';
import { lines } from '../../procedure/edit/typed.ts';
import { procedureForm } from '../../words/procedure-form.ts';
import { choicesFrom } from './choices.ts';
import { ChoiceField, Field, FlagField } from './fields.tsx';
import { Members } from './members.tsx';

/** What is asked about the unit, opened, sealed and used up. */
export function StockSection(): JSX.Element {
  return (
    <section aria-labelledby="stock">
      <h2 id="stock">{procedureForm.stock}</h2>
      <Members list={['conditions']} one="condition" onAdd={addCondition}>
        {(path) => <Field label={procedureForm.condition.question} path={[...path, 'question']} />}
      </Members>
      <Members list={['openings']} one="opening" onAdd={addOpening}>
        {(path) => (
          <div class="grid">
            <Field label={procedureForm.opening.name} path={[...path, 'name']} />
            <ChoiceField
              label={procedureForm.opening.closure}
              path={[...path, 'closure']}
              choices={choicesFrom(['cap', 'plug'], procedureForm.opening.closures)}
            />
          </div>
        )}
      </Members>
      <Members list={['seals']} one="seal" onAdd={addSeal}>
        {(path) => (
          <div class="grid">
            <Field label={procedureForm.seal.name} path={[...path, 'name']} />
            <Field label={procedureForm.seal.partNumber} path={[...path, 'partNumber']} />
            <Field label={procedureForm.seal.fluid} path={[...path, 'fluid']} />
            <ChoiceField
              label={procedureForm.seal.reuse}
              path={[...path, 'reuse']}
              choices={choicesFrom(['never', 'if it passes inspection'], procedureForm.seal.reuses)}
            />
            <Field label={procedureForm.seal.criteria} path={[...path, 'criteria']} notation={lines} lines={3} />
          </div>
        )}
      </Members>
      <Members list={['consumables']} one="consumable" onAdd={addConsumable}>
        {(path) => (
          <div class="grid">
            <Field label={procedureForm.consumable.name} path={[...path, 'name']} />
            <FlagField label={procedureForm.consumable.expires} path={[...path, 'expires']} />
          </div>
        )}
      </Members>
    </section>
  );
}
