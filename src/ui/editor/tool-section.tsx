import type { JSX } from 'solid-js';
import { addTool } from '../../procedure/edit/things.ts';
import { ChoiceField, Field, QuantityField } from './fields.tsx';
import { Members } from './members.tsx';

/** The torque tools that the steps name. */
export function ToolSection(): JSX.Element {
  return (
    <section aria-labelledby="tools">
      <h2 id="tools">Torque tools</h2>
      <Members list={['tools']} one="Tool" onAdd={addTool}>
        {(path) => (
          <div class="grid">
            <Field label="Name of the tool" path={[...path, 'name']} />
            <ChoiceField
              label="Type"
              path={[...path, 'type']}
              choices={[
                { value: 'indicating', label: 'indicating: it shows the torque' },
                { value: 'setting', label: 'setting: it is set and signals' },
              ]}
            />
            <QuantityField label="Range from" path={[...path, 'range', 'min']} of="torque" />
            <QuantityField
              label="Range to"
              path={[...path, 'range', 'max']}
              of="torque"
              like={[...path, 'range', 'min']}
            />
            <QuantityField
              label="Resolution"
              path={[...path, 'resolution']}
              of="torque"
              like={[...path, 'range', 'min']}
            />
            <ChoiceField
              label="Class"
              path={[...path, 'class']}
              choices={['A', 'B', 'C', 'D', 'E', 'F', 'G']}
              none="not known"
            />
            <Field label="Largest error, per cent" path={[...path, 'maximumError']} numeric />
            <Field label="Calibration holds until" path={[...path, 'calibrationDue']} hint="2031-03-31" />
          </div>
        )}
      </Members>
    </section>
  );
}
