import type { JSX } from 'solid-js';
import { retitle } from '../../procedure/edit/things.ts';
import { lines, whole } from '../../procedure/edit/typed.ts';
import { procedureForm } from '../../words/procedure-form.ts';
import { Boxes } from './boxes.tsx';
import { choicesFrom } from './choices.ts';
import { useEditor } from './editor.ts';
import { Field, FlagField, QuantityField } from './fields.tsx';

/** What the procedure is, where its values come from, and what is worked on. */
export function HeadSection(): JSX.Element {
  const editor = useEditor();
  return (
    <section aria-labelledby="head">
      <h2 id="head">{procedureForm.head.title}</h2>
      <fieldset>
        <legend>{procedureForm.head.titleAndSource}</legend>
        <div class="grid">
          <Field
            label={procedureForm.head.ofProcedure}
            path={['title']}
            onTyped={(typed) => editor.edit((draft) => retitle(draft, typed.trim()), 'title')}
          />
          <Field label={procedureForm.head.document} path={['source', 'document']} />
          <Field label={procedureForm.head.revision} path={['source', 'revision']} />
          <Field label={procedureForm.head.issued} path={['source', 'issued']} hint="2026-03-31" />
          <Field label={procedureForm.head.persons} path={['persons']} notation={whole} numeric />
          <FlagField label={procedureForm.head.invented} path={['invented']} />
        </div>
        <Boxes
          legend={procedureForm.head.signatures}
          path={['signatures']}
          choices={choicesFrom(['mechanic', 'inspector'], procedureForm.head.signers)}
        />
      </fieldset>
      <fieldset>
        <legend>{procedureForm.component.title}</legend>
        <div class="grid">
          <Field label={procedureForm.component.name} path={['component', 'name']} />
          <Field label={procedureForm.component.partNumber} path={['component', 'partNumber']} />
          <QuantityField label={procedureForm.component.dryMass} path={['component', 'dryMass']} of="mass" />
          <QuantityField label={procedureForm.component.drains} path={['component', 'drains']} of="volume" />
          <QuantityField
            label={procedureForm.component.retains}
            path={['component', 'retains']}
            of="volume"
            like={['component', 'drains']}
          />
          <Field label={procedureForm.component.fluid} path={['component', 'fluid', 'name']} />
          <QuantityField
            label={procedureForm.component.density}
            path={['component', 'fluid', 'density']}
            of="density"
          />
          <Field label={procedureForm.component.portsUp} path={['component', 'portsUp']} notation={lines} lines={2} />
        </div>
      </fieldset>
      <fieldset>
        <legend>{procedureForm.container.title}</legend>
        <div class="grid">
          <Field label={procedureForm.container.name} path={['container', 'name']} />
          <QuantityField
            label={procedureForm.container.capacity}
            path={['container', 'capacity']}
            of="volume"
            like={['component', 'drains']}
          />
          <Field label={procedureForm.container.margin} path={['container', 'marginPercent']} hint="20" numeric />
        </div>
      </fieldset>
    </section>
  );
}
