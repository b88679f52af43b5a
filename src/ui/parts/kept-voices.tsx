import { For, Show, createSignal, type JSX } from 'solid-js';
import { forgetVoice } from '../../storage/voices.ts';
import type { Shop } from '../app.tsx';
import { microphone } from '../../words/microphone.ts';
import { measuredInWords, verdictOf } from '../check-words.ts';
import { messageOf } from '../message.ts';
import { showMoment } from '../moment.ts';
import { Trouble } from './trouble.tsx';

/** Whose voices were checked on this device, and a way to delete each. */
export function KeptVoices(props: { readonly shop: Shop }): JSX.Element {
  const [trouble, setTrouble] = createSignal<string | null>(null);
  async function forget(name: string): Promise<void> {
    try {
      props.shop.setVoices(await forgetVoice(name));
      setTrouble(null);
    } catch (error) {
      setTrouble(microphone.notDeleted(name, messageOf(error)));
    }
  }
  return (
    <Show when={props.shop.voices().length > 0}>
      <section aria-labelledby="voices">
        <h2 id="voices">{microphone.keptHere}</h2>
        <p>{microphone.figuresOnly}</p>
        <ul class="voices">
          <For each={props.shop.voices()}>
            {(voice) => (
              <li>
                <span>
                  {microphone.checked(
                    <b>{voice.name}</b>,
                    showMoment(voice.checkedAt),
                    microphone.fitness[verdictOf(voice).fitness],
                    measuredInWords(voice),
                  )}
                </span>
                <button
                  type="button"
                  aria-label={microphone.deletes(voice.name)}
                  onClick={() => void forget(voice.name)}
                >
                  {microphone.delete}
                </button>
              </li>
            )}
          </For>
        </ul>
        <Trouble text={trouble()} />
      </section>
    </Show>
  );
}
