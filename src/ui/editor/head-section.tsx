import type { JSX } from 'solid-js';
import { retitle } from '../../procedure/edit/things.ts';
import { lines, whole } from '../../procedure/edit/typed.ts';
import { Boxes } from './boxes.tsx';
import { useEditor } from './editor.ts';
import { Field, FlagField, QuantityField } from './fields.tsx';

/** What the procedure is, where its values come from, and what is worked on. */
export function HeadSection(): JSX.Element {
  const editor = useEditor();
  return (
    <section aria-labelledby="head">
      <h2 id="head">Procedure</h2>
      <fieldset>
        <legend>Title and source</legend>
        <div class="grid">
          <Field
            label="Title"
            path={['title']}
            onTyped={(typed) => editor.edit((draft) => retitle(draft, typed.trim()), 'title')}
          />
          <Field label="Source document" path={['source', 'document']} />
          <Field label="Revision" path={['source', 'revision']} />
          <Field label="Issued on" path={['source', 'issued']} hint="2026-03-31" />
          <Field label="Persons needed" path={['persons']} notation={whole} numeric />
          <FlagField label="All values are invented, for a demonstration" path={['invented']} />
        </div>
        <Boxes
          legend="Signed before the record is closed, by the"
          path={['signatures']}
          choices={['mechanic', 'inspector'].map((role) => ({ value: role, label: role }))}
        />
      </fieldset>
      <fieldset>
        <legend>Component</legend>
        <div class="grid">
          <Field label="Name of the component" path={['component', 'name']} />
          <Field label="Part number" path={['component', 'partNumber']} />
          <QuantityField label="Dry mass" path={['component', 'dryMass']} of="mass" />
          <QuantityField label="Drains" path={['component', 'drains']} of="volume" />
          <QuantityField label="Retains" path={['component', 'retains']} of="volume" like={['component', 'drains']} />
          <Field label="Fluid" path={['component', 'fluid', 'name']} />
          <QuantityField label="Density of the fluid" path={['component', 'fluid', 'density']} of="density" />
          <Field label="Ports kept up, a line each" path={['component', 'portsUp']} notation={lines} lines={2} />
        </div>
      </fieldset>
      <fieldset>
        <legend>Container under it</legend>
        <div class="grid">
          <Field label="Name of the container" path={['container', 'name']} />
          <QuantityField label="Capacity" path={['container', 'capacity']} of="volume" like={['component', 'drains']} />
          <Field label="Margin, per cent" path={['container', 'marginPercent']} hint="20" numeric />
        </div>
      </fieldset>
    </section>
  );
}
