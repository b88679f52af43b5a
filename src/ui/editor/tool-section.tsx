import type { JSX } from 'solid-js';
import { addAdapter, addTool } from '../../procedure/edit/things.ts';
import { ChoiceField, Field, QuantityField } from './fields.tsx';
import { Members } from './members.tsx';

/** The torque tools that the steps name, and what is put on them. */
export function ToolSection(): JSX.Element {
  return (
    <section aria-labelledby="tools">
      <h2 id="tools">Torque tools and adapters</h2>
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
            <QuantityField label="Lever, drive to grip" path={[...path, 'lever']} of="length" />
            <Field label="Largest error, per cent" path={[...path, 'maximumError']} numeric />
            <Field label="Calibration holds until" path={[...path, 'calibrationDue']} hint="2031-03-31" />
          </div>
        )}
      </Members>
      <Members list={['adapters']} one="Adapter" onAdd={addAdapter}>
        {(path) => (
          <div class="grid">
            <Field label="Name of the adapter" path={[...path, 'name']} />
            <QuantityField label="Length" path={[...path, 'length']} of="length" />
            <QuantityField label="Angle to the wrench" path={[...path, 'angle']} of="angle" />
          </div>
        )}
      </Members>
    </section>
  );
}
