import { For, createEffect, createMemo, createSignal, on, onCleanup, type JSX } from 'solid-js';
import { watchTouch } from '../../gesture/touch-pad.ts';
import type { Touched } from '../../gesture/touch.ts';
import { readThresholds, type TouchThresholds } from '../../gesture/touch-thresholds.ts';
import { isSamePerson } from '../../session/people.ts';
import { teachScreen } from '../../words/teach-screen.ts';
import type { Shop } from '../app.tsx';
import { TOUCH_AT_FIRST, touchBook, type TouchHabit } from '../hand-habits.ts';
import { touchedWords } from '../touch-words.ts';
import { AmountField } from './amount-field.tsx';
import { Faults } from './faults.tsx';
import { KeptLine } from './kept-line.tsx';

const FIELDS = [
  { of: 'longPress', unit: 'ms', step: 100 },
  { of: 'resting', unit: 'ms', step: 500 },
  { of: 'palm', unit: 'mm', step: 5 },
  { of: 'travel', unit: 'mm', step: 2 },
  { of: 'swipe', unit: 'mm', step: 5 },
  { of: 'together', unit: 'ms', step: 20 },
  { of: 'near', unit: 'mm', step: 5 },
] as const satisfies readonly {
  readonly of: keyof TouchThresholds;
  readonly unit: 'ms' | 'mm';
  readonly step: number;
}[];

/** How one person touches: tried on a pad with glove, knuckle or elbow, with the bounds beside it. */
export function TouchSection(props: { readonly shop: Shop; readonly person: string }): JSX.Element {
  const kept = createMemo(() => props.shop.touch().find(({ name }) => isSamePerson(name, props.person))?.value);
  const [draft, setDraft] = createSignal<TouchHabit>(TOUCH_AT_FIRST);
  const [faults, setFaults] = createSignal<readonly { readonly message: string }[]>([]);
  // What is not kept of one person is nobody else's.
  createEffect(
    on([kept, () => props.person], ([now]) => {
      setDraft(now ?? TOUCH_AT_FIRST);
      setFaults([]);
    }),
  );

  async function change(to: TouchHabit): Promise<void> {
    setDraft(to);
    const read = readThresholds(to.thresholds);
    setFaults(read.kind === 'faulty' ? read.faults : []);
    if (read.kind === 'valid') props.shop.setTouch(await touchBook.keep({ name: props.person, value: to }));
  }

  const forget = async (): Promise<void> => {
    const left = await touchBook.forget(props.person);
    props.shop.setTouch(left);
  };
  return (
    <section aria-labelledby="touch">
      <h2 id="touch">{teachScreen.touch.title}</h2>
      <label class="tick">
        <input
          type="checkbox"
          checked={draft().halves}
          onChange={(event) => void change({ ...draft(), halves: event.currentTarget.checked })}
        />
        <span>{teachScreen.touch.halves}</span>
      </label>
      <Pad thresholds={draft().thresholds} pixelsPerMm={props.shop.display.letters().pixelsPerMm} />
      <div class="amounts">
        <For each={FIELDS}>
          {({ of, unit, step }) => (
            <AmountField
              label={teachScreen.touch.bounds[of]}
              unit={unit}
              step={step}
              value={draft().thresholds[of]}
              onChange={(value) => void change({ ...draft(), thresholds: { ...draft().thresholds, [of]: value } })}
            />
          )}
        </For>
      </div>
      <Faults faults={faults()} />
      <KeptLine
        person={props.person}
        isKept={kept() !== undefined}
        otherwise={teachScreen.touch.nothingSet}
        onForget={forget}
      />
    </section>
  );
}

function Pad(props: { readonly thresholds: TouchThresholds; readonly pixelsPerMm: number }): JSX.Element {
  const [tried, setTried] = createSignal<readonly Touched[]>([]);
  let pad: HTMLDivElement | undefined;
  createEffect(() => {
    const thresholds = props.thresholds;
    const pixelsPerMm = props.pixelsPerMm;
    // What the bounds were is no news any more.
    setTried([]);
    if (pad)
      onCleanup(
        watchTouch(pad, thresholds, pixelsPerMm, (touched) =>
          setTried((before) => [touched, ...before].slice(0, MOST_SHOWN)),
        ),
      );
  });
  return (
    <>
      <div class="try-pad" ref={pad}>
        <p>{teachScreen.touch.touchHere}</p>
      </div>
      <ol class="tried" aria-live="polite" aria-label={teachScreen.touch.recognised}>
        <For each={tried()} fallback={<li>{teachScreen.nothingYet}</li>}>
          {(touched) => (
            <li>
              {touchedWords(touched)}{' '}
              <span class="lasted">{teachScreen.touch.lasted(Math.round(touched.to - touched.from))}</span>
            </li>
          )}
        </For>
      </ol>
    </>
  );
}

const MOST_SHOWN = 4;
