import type { JSX } from 'solid-js';
import { addAdapter, addTool } from '../../procedure/edit/things.ts';
import { procedureForm } from '../../words/procedure-form.ts';
import { choicesFrom } from './choices.ts';
import { ChoiceField, Field, QuantityField } from './fields.tsx';
import { Members } from './members.tsx';

/** The torque tools that the steps name, and what is put on them. */
export function ToolSection(): JSX.Element {
  return (
    <section aria-labelledby="tools">
      <h2 id="tools">{procedureForm.tool.title}</h2>
      <Members list={['tools']} one="tool" onAdd={addTool}>
        {(path) => (
          <div class="grid">
            <Field label={procedureForm.tool.name} path={[...path, 'name']} />
            <ChoiceField
              label={procedureForm.tool.type}
              path={[...path, 'type']}
              choices={choicesFrom(['indicating', 'setting'], procedureForm.tool.types)}
            />
            <QuantityField label={procedureForm.tool.rangeFrom} path={[...path, 'range', 'min']} of="torque" />
            <QuantityField
              label={procedureForm.tool.rangeTo}
              path={[...path, 'range', 'max']}
              of="torque"
              like={[...path, 'range', 'min']}
            />
            <QuantityField
              label={procedureForm.tool.resolution}
              path={[...path, 'resolution']}
              of="torque"
              like={[...path, 'range', 'min']}
            />
            <ChoiceField
              label={procedureForm.tool.class}
              path={[...path, 'class']}
              choices={['A', 'B', 'C', 'D', 'E', 'F', 'G']}
              none={procedureForm.tool.classUnknown}
            />
            <QuantityField label={procedureForm.tool.lever} path={[...path, 'lever']} of="length" />
            <Field label={procedureForm.tool.maximumError} path={[...path, 'maximumError']} numeric />
            <Field label={procedureForm.tool.calibrationDue} path={[...path, 'calibrationDue']} hint="2031-03-31" />
          </div>
        )}
      </Members>
      <Members list={['adapters']} one="adapter" onAdd={addAdapter}>
        {(path) => (
          <div class="grid">
            <Field label={procedureForm.adapter.name} path={[...path, 'name']} />
            <QuantityField label={procedureForm.adapter.length} path={[...path, 'length']} of="length" />
            <QuantityField label={procedureForm.adapter.angle} path={[...path, 'angle']} of="angle" />
          </div>
        )}
      </Members>
    </section>
  );
}
