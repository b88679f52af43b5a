import { createSignal, For, Index, untrack, type JSX } from 'solid-js';
import { listAt, wordsAt } from '../../procedure/edit/draft.ts';
import { addStep } from '../../procedure/edit/things.ts';
import { STEP_KINDS, type StepKind } from '../../procedure/edit/variants.ts';
import { editorPage } from '../../words/editor-page.ts';
import { stepForm } from '../../words/step-form.ts';
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
  const remarksIn = (index: number): number => {
    const here = placeOf(index);
    return editor.remarks().filter(({ place }) => place === here || place.startsWith(`${here}.`)).length;
  };

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
      <h2 id="steps">{stepForm.title}</h2>
      <Said path={['steps']} own />
      <Index each={steps()}>
        {(step, i) => (
          <details class="step" id={`step-${i}`} open={untrack(isFew)}>
            <summary data-place={placeOf(i)}>
              <b>{editorPage.numbered('step', i + 1)}</b> <span>{wordsAt(step(), ['title']) || stepForm.untitled}</span>{' '}
              <span class="kind">{kindWords(wordsAt(step(), ['kind']))}</span>{' '}
              <span class="count">{stepForm.remarks(remarksIn(i))}</span>
            </summary>
            <Said path={['steps', i]} own />
            <StepForm index={i} />
            <MemberButtons list={['steps']} index={i} count={steps().length} one="step" />
          </details>
        )}
      </Index>
      <div class="add-step">
        <label>
          {stepForm.nextKind}
          <select onChange={(event) => setKind(event.currentTarget.value as StepKind)}>
            <For each={STEP_KINDS}>
              {(each) => (
                <option value={each} selected={each === kind()}>
                  {stepForm.kinds[each]}
                </option>
              )}
            </For>
          </select>
        </label>
        <button type="button" data-place="steps" onClick={add}>
          {editorPage.add('step')}
        </button>
      </div>
    </section>
  );
}

const placeOf = (index: number): string => ['steps', index].join('.');

/** The kind of a step in words; what is none, as it stands in the file. */
function kindWords(kind: string): string {
  const known = STEP_KINDS.find((each) => each === kind);
  return known === undefined ? kind : stepForm.kinds[known];
}
