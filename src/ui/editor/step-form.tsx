import { Match, Show, Switch, type JSX } from 'solid-js';
import { at, listAt, type Path, put, wordsAt } from '../../procedure/edit/draft.ts';
import { addHazard, addOutcome } from '../../procedure/edit/things.ts';
import { lines, whole } from '../../procedure/edit/typed.ts';
import { STEP_KINDS, type StepKind, stepOfKind } from '../../procedure/edit/variants.ts';
import { AppliesField } from './applies-field.tsx';
import { Boxes } from './boxes.tsx';
import { choicesOf } from './choices.ts';
import { useEditor } from './editor.ts';
import { ChoiceField, Field, FlagField } from './fields.tsx';
import { Members } from './members.tsx';
import { TightenForm } from './tighten-form.tsx';

/** All fields of one step: what every step has, and what its kind has besides. */
export function StepForm(props: { readonly index: number }): JSX.Element {
  const editor = useEditor();
  const path = (): Path => ['steps', props.index];
  const inside = (...names: readonly string[]): Path => [...path(), ...names];
  const kind = (): string => wordsAt(editor.draft(), inside('kind'));
  return (
    <>
      <div class="grid">
        <ChoiceField
          label="Kind of step"
          path={inside('kind')}
          choices={STEP_KINDS}
          onChosen={(chosen) => {
            const step = path();
            editor.edit((draft) => {
              const changed = stepOfKind(chosen as StepKind, at(draft, step), draft);
              return put(draft, step, changed);
            });
          }}
        />
        <Field label="Title of the step" path={inside('title')} />
        <Field label="What is to be done" path={inside('text')} lines={2} />
        <Field label="The same, short, as spoken" path={inside('say')} />
        <AppliesField path={inside('applies')} />
      </div>
      <Switch>
        <Match when={kind() === 'tighten'}>
          <TightenForm index={props.index} />
        </Match>
        <Match when={kind() === 'loosen'}>
          <div class="grid">
            <ChoiceField
              label="Pattern to free"
              path={inside('pattern')}
              choices={choicesOf(editor.draft(), 'patterns')}
            />
            <Field
              label="Stages, a line each"
              path={inside('stages')}
              notation={lines}
              lines={2}
              hint="break loose, a quarter turn each"
            />
          </div>
        </Match>
        <Match when={kind() === 'open' || kind() === 'close'}>
          <ChoiceField label="Opening" path={inside('opening')} choices={choicesOf(editor.draft(), 'openings')} />
        </Match>
        <Match when={kind() === 'do'}>
          <Boxes legend="Comes open here" path={inside('opens')} choices={choicesOf(editor.draft(), 'openings')} />
          <Boxes
            legend="Is connected again here"
            path={inside('closes')}
            choices={choicesOf(editor.draft(), 'openings')}
          />
          <Boxes
            legend="All fasteners started by hand"
            path={inside('handStart')}
            choices={choicesOf(editor.draft(), 'patterns')}
          />
        </Match>
        <Match when={kind() === 'check'}>
          <Members list={inside('outcomes')} one="Answer" onAdd={(draft) => addOutcome(draft, props.index)}>
            {(outcome) => (
              <div class="grid">
                <Field label="Answer" path={[...outcome, 'id']} />
                <Field label="What is said to it" path={[...outcome, 'text']} />
                <ChoiceField label="Then" path={[...outcome, 'then']} choices={['go on', 'stay']} />
              </div>
            )}
          </Members>
        </Match>
        <Match when={kind() === 'hold'}>
          <div class="grid">
            <Field label="Orientation" path={inside('orientation')} />
            <Field label="Told every … seconds" path={inside('everySeconds')} notation={whole} hint="15" numeric />
          </div>
        </Match>
        <Match when={kind() === 'measure'}>
          <div class="grid">
            <Field label="What is measured" path={inside('what')} />
            <Field label="Unit" path={inside('unit')} />
            <Field label="At least" path={inside('window', 'min')} numeric />
            <Field label="At most" path={inside('window', 'max')} numeric />
            <FlagField label="The scale goes below zero" path={inside('belowZero')} />
            <Field label="After a wait of … minutes" path={inside('waitMinutes')} notation={whole} numeric />
          </div>
        </Match>
        <Match when={kind() === 'witness'}>
          <div class="grid">
            <Field label="What the second person looks at" path={inside('what')} />
            <FlagField label="By somebody who did none of the work" path={inside('independent')} />
          </div>
        </Match>
      </Switch>
      <Show when={choicesOf(editor.draft(), 'seals').length > 0 && (kind() === 'do' || kind() === 'check')}>
        <Members
          list={inside('seals')}
          one="Seal"
          onAdd={(draft) => {
            const seals = inside('seals');
            return put(draft, seals, [...listAt(draft, seals), { is: 'seated' }]);
          }}
        >
          {(seal) => (
            <div class="grid">
              <ChoiceField label="Seal" path={[...seal, 'seal']} choices={choicesOf(editor.draft(), 'seals')} />
              <ChoiceField
                label="is"
                path={[...seal, 'is']}
                choices={['inspected', 'lubricated', 'seated', 'discarded']}
              />
            </div>
          )}
        </Members>
      </Show>
      <Members list={inside('hazards')} one="Hazard" onAdd={(draft) => addHazard(draft, props.index)}>
        {(hazard) => (
          <div class="grid">
            <ChoiceField
              label="Signal word"
              path={[...hazard, 'signal']}
              choices={['danger', 'warning', 'caution', 'notice']}
            />
            <ChoiceField label="Harm to" path={[...hazard, 'consequence']} choices={['person', 'equipment']} />
            <Field label="Hazard" path={[...hazard, 'text']} lines={2} />
          </div>
        )}
      </Members>
      <div class="grid">
        <Field label="Notes, a line each" path={inside('notes')} notation={lines} lines={2} />
        <FlagField label="A second person must take part" path={inside('witness')} />
      </div>
    </>
  );
}
