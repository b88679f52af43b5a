import { Show, createSignal, untrack, type JSX } from 'solid-js';
import { practiceOffer } from '../../words/practice-offer.ts';
import type { Shop } from '../app.tsx';
import { messageOf } from '../message.ts';
import { go } from '../router.ts';
import { Trouble } from './trouble.tsx';

/** Offers to practise: in full at the first visit, later as one button. */
export function PracticeOffer(props: { readonly shop: Shop; readonly mechanic: string }): JSX.Element {
  const [isNew, setNew] = createSignal(untrack(() => !props.shop.settings.practised));
  const [trouble, setTrouble] = createSignal<string | null>(null);
  function past(): void {
    props.shop.remember({ practised: true });
  }
  async function practise(): Promise<void> {
    setTrouble(null);
    try {
      const { startPractice } = await import('../job-screens.ts');
      const session = await startPractice(props.shop, props.mechanic);
      past();
      go({ kind: 'work', session });
    } catch (error) {
      setTrouble(practiceOffer.cannotBegin(messageOf(error)));
    }
  }
  return (
    <section class="practice" aria-labelledby="practice">
      <h2 id="practice">{isNew() ? practiceOffer.newHere : practiceOffer.practice}</h2>
      <Show when={isNew()}>
        <p>{practiceOffer.twoMinutes}</p>
      </Show>
      <p>
        <button type="button" onClick={() => void practise()}>
          {practiceOffer.practise}
        </button>{' '}
        <Show when={isNew()}>
          <button
            type="button"
            onClick={() => {
              past();
              setNew(false);
            }}
          >
            {practiceOffer.notNow}
          </button>
        </Show>
      </p>
      <Trouble text={trouble()} />
    </section>
  );
}
