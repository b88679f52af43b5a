import { createSignal, For, Index, untrack, type JSX } from 'solid-js';
import { listAt, wordsAt } from '../../procedure/edit/draft.ts';
import { addStep } from '../../procedure/edit/things.ts';
import { STEP_KINDS, type StepKind } from '../../procedure/edit/variants.ts';
import { useEditor } from './editor.ts';
import { Said } from './fields.tsx';
import { MemberButtons } from './members.tsx';
import { StepForm } from './step-form.tsx';

/** The most steps that stand open when a procedure is opened. */
const FEW = 3;

/** The steps in their order, each folded to its title until it is looked at. */
export function StepSection(): JSX.Element {
  const editor = useEditor();
  const steps = () => listAt(editor.draft(), ['steps']);
  const [kind, setKind] = createSignal<StepKind>('do');
  const isFew = (): boolean => steps().length <= FEW;
  const remarksIn = (index: number): number =>
    editor.remarks().filter(({ place }) => place === `steps.${index}` || place.startsWith(`steps.${index}.`)).length;

  function add(): void {
    const added = steps().length;
    const chosen = untrack(kind);
    editor.edit((draft) => addStep(draft, chosen));
    const details = document.getElementById(`step-${added}`);
    if (details instanceof HTMLDetailsElement) details.open = true;
    document.getElementById(`at-steps-${added}-title`)?.focus();
  }

  return (
    <section aria-labelledby="steps">
      <h2 id="steps">Steps</h2>
      <Said path={['steps']} own />
      <Index each={steps()}>
        {(step, i) => (
          <details class="step" id={`step-${i}`} open={untrack(isFew)}>
            <summary data-place={`steps.${i}`}>
              <b>Step {i + 1}</b> <span>{wordsAt(step(), ['title']) || 'without a title'}</span>{' '}
              <span class="kind">{wordsAt(step(), ['kind'])}</span>{' '}
              <span class="count">{countWords(remarksIn(i))}</span>
            </summary>
            <Said path={['steps', i]} own />
            <StepForm index={i} />
            <MemberButtons list={['steps']} index={i} count={steps().length} one="Step" />
          </details>
        )}
      </Index>
      <div class="add-step">
        <label>
          Kind of the next step
          <select onChange={(event) => setKind(event.currentTarget.value as StepKind)}>
            <For each={STEP_KINDS}>{(each) => <option selected={each === kind()}>{each}</option>}</For>
          </select>
        </label>
        <button type="button" data-place="steps" onClick={add}>
          Add a step
        </button>
      </div>
    </section>
  );
}

const countWords = (count: number): string => (count === 0 ? '' : count === 1 ? '1 remark' : `${count} remarks`);
