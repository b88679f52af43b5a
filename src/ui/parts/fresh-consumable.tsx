/** What is typed off a fresh packing in the work, where the one that is asked for is past its day or used up. */
import { Show, createEffect, createMemo, createSignal, on, type JSX } from 'solid-js';
import type { Meaning } from '../../session/intent.ts';
import { signing } from '../../words/signing.ts';
import type { SpentView } from '../view/spent.ts';
import { Trouble } from './trouble.tsx';

export function FreshConsumable(props: {
  readonly spent: SpentView;
  readonly onMeaning: (meaning: Meaning) => void;
}): JSX.Element {
  const [batch, setBatch] = createSignal('');
  const [expires, setExpires] = createSignal('');
  const [quantity, setQuantity] = createSignal('');
  // What was typed of one is not said of another; what was refused of one is put right and not typed anew.
  const before = createMemo(() => props.spent.before ?? props.spent.consumable);
  createEffect(on(before, () => [setBatch, setExpires, setQuantity].forEach((set) => set(''))));
  return (
    <section class="closing" aria-label={signing.fresh(props.spent.name)}>
      <form
        class="typed"
        onSubmit={(event) => {
          event.preventDefault();
          const { consumable } = props.spent;
          props.onMeaning({
            kind: 'fresh consumable',
            consumable,
            batch: batch(),
            expires: expires(),
            quantity: quantity(),
          });
        }}
      >
        <p class="question">{props.spent.why}</p>
        <label>
          {signing.batch}
          <input name="batch" autocomplete="off" value={batch()} onInput={(e) => setBatch(e.currentTarget.value)} />
        </label>
        <Show when={props.spent.wantsExpiry}>
          <label>
            {signing.useBy}
            <input
              name="expires"
              type="date"
              aria-invalid={props.spent.fault?.field === 'expires'}
              value={expires()}
              onInput={(e) => setExpires(e.currentTarget.value)}
            />
          </label>
        </Show>
        <Show when={props.spent.wantsQuantity}>
          <label>
            {signing.howMany}
            <input
              name="quantity"
              inputmode="numeric"
              autocomplete="off"
              aria-invalid={props.spent.fault?.field === 'quantity'}
              value={quantity()}
              onInput={(e) => setQuantity(e.currentTarget.value)}
            />
          </label>
        </Show>
        <Trouble text={props.spent.fault?.why} />
        <div class="choices">
          <button type="submit">{signing.freshIsHere}</button>
        </div>
      </form>
    </section>
  );
}
