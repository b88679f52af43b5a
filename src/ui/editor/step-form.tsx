import { Match, Show, Switch, type JSX } from 'solid-js';
import { at, listAt, type Path, put, wordsAt } from '../../procedure/edit/draft.ts';
import { addHazard, addOutcome } from '../../procedure/edit/things.ts';
import { lines, whole } from '../../procedure/edit/typed.ts';
import { STEP_KINDS, type StepKind, stepOfKind } from '../../procedure/edit/variants.ts';
import { stepForm } from '../../words/step-form.ts';
import { AppliesField } from './applies-field.tsx';
import { Boxes } from './boxes.tsx';
import { choicesFrom, choicesOf } from './choices.ts';
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
          label={stepForm.kind}
          path={inside('kind')}
          choices={choicesFrom(STEP_KINDS, stepForm.kinds)}
          onChosen={(chosen) => {
            const step = path();
            editor.edit((draft) => {
              const changed = stepOfKind(chosen as StepKind, at(draft, step), draft);
              return put(draft, step, changed);
            });
          }}
        />
        <Field label={stepForm.ofStep} path={inside('title')} />
        <Field label={stepForm.text} path={inside('text')} lines={2} />
        <Field label={stepForm.say} path={inside('say')} />
        <AppliesField path={inside('applies')} />
      </div>
      <Switch>
        <Match when={kind() === 'tighten'}>
          <TightenForm index={props.index} />
        </Match>
        <Match when={kind() === 'loosen'}>
          <div class="grid">
            <ChoiceField
              label={stepForm.free.pattern}
              path={inside('pattern')}
              choices={choicesOf(editor.draft(), 'patterns')}
            />
            <Field
              label={stepForm.free.stages}
              path={inside('stages')}
              notation={lines}
              lines={2}
              hint={stepForm.free.stagesExample}
            />
          </div>
        </Match>
        <Match when={kind() === 'open' || kind() === 'close'}>
          <ChoiceField
            label={stepForm.opening}
            path={inside('opening')}
            choices={choicesOf(editor.draft(), 'openings')}
          />
        </Match>
        <Match when={kind() === 'do'}>
          <Boxes legend={stepForm.opens} path={inside('opens')} choices={choicesOf(editor.draft(), 'openings')} />
          <Boxes legend={stepForm.closes} path={inside('closes')} choices={choicesOf(editor.draft(), 'openings')} />
          <Boxes
            legend={stepForm.handStart}
            path={inside('handStart')}
            choices={choicesOf(editor.draft(), 'patterns')}
          />
        </Match>
        <Match when={kind() === 'check'}>
          <Members list={inside('outcomes')} one="answer" onAdd={(draft) => addOutcome(draft, props.index)}>
            {(outcome) => (
              <div class="grid">
                <Field label={stepForm.outcome.id} path={[...outcome, 'id']} />
                <Field label={stepForm.outcome.text} path={[...outcome, 'text']} />
                <ChoiceField
                  label={stepForm.outcome.then}
                  path={[...outcome, 'then']}
                  choices={choicesFrom(['go on', 'stay'], stepForm.outcome.thens)}
                />
              </div>
            )}
          </Members>
        </Match>
        <Match when={kind() === 'hold'}>
          <div class="grid">
            <Field label={stepForm.hold.orientation} path={inside('orientation')} />
            <Field
              label={stepForm.hold.everySeconds}
              path={inside('everySeconds')}
              notation={whole}
              hint="15"
              numeric
            />
          </div>
        </Match>
        <Match when={kind() === 'measure'}>
          <div class="grid">
            <Field label={stepForm.measure.what} path={inside('what')} />
            <Field label={stepForm.measure.unit} path={inside('unit')} />
            <Field label={stepForm.measure.atLeast} path={inside('window', 'min')} numeric />
            <Field label={stepForm.measure.atMost} path={inside('window', 'max')} numeric />
            <FlagField label={stepForm.measure.belowZero} path={inside('belowZero')} />
            <Field label={stepForm.measure.waitMinutes} path={inside('waitMinutes')} notation={whole} numeric />
          </div>
        </Match>
        <Match when={kind() === 'witness'}>
          <div class="grid">
            <Field label={stepForm.inspection.what} path={inside('what')} />
            <FlagField label={stepForm.inspection.independent} path={inside('independent')} />
          </div>
        </Match>
      </Switch>
      <Show when={choicesOf(editor.draft(), 'seals').length > 0 && (kind() === 'do' || kind() === 'check')}>
        <Members
          list={inside('seals')}
          one="seal"
          onAdd={(draft) => {
            const seals = inside('seals');
            return put(draft, seals, [...listAt(draft, seals), { is: 'seated' }]);
          }}
        >
          {(seal) => (
            <div class="grid">
              <ChoiceField
                label={stepForm.seal.name}
                path={[...seal, 'seal']}
                choices={choicesOf(editor.draft(), 'seals')}
              />
              <ChoiceField
                label={stepForm.seal.is}
                path={[...seal, 'is']}
                choices={choicesFrom(['inspected', 'lubricated', 'seated', 'discarded'], stepForm.seal.states)}
              />
            </div>
          )}
        </Members>
      </Show>
      <Members list={inside('hazards')} one="hazard" onAdd={(draft) => addHazard(draft, props.index)}>
        {(hazard) => (
          <div class="grid">
            <ChoiceField
              label={stepForm.hazard.signal}
              path={[...hazard, 'signal']}
              choices={choicesFrom(['danger', 'warning', 'caution', 'notice'], stepForm.hazard.signals)}
            />
            <ChoiceField
              label={stepForm.hazard.consequence}
              path={[...hazard, 'consequence']}
              choices={choicesFrom(['person', 'equipment'], stepForm.hazard.consequences)}
            />
            <Field label={stepForm.hazard.text} path={[...hazard, 'text']} lines={2} />
          </div>
        )}
      </Members>
      <div class="grid">
        <Field label={stepForm.notes} path={inside('notes')} notation={lines} lines={2} />
        <FlagField label={stepForm.witness} path={inside('witness')} />
      </div>
    </>
  );
}
