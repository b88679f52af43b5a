import { For, Show, createSignal, type JSX } from 'solid-js';
import type { Shop } from '../app.tsx';
import { loadFromDisk, loadOffered, type Choice } from '../models.ts';
import { FileButton } from './file-button.tsx';
import { HearingStrip } from './hearing-strip.tsx';

/** Which speech model hears, and how to choose another. */
export function SpeechModel(props: { readonly shop: Shop }): JSX.Element {
  const [trouble, setTrouble] = createSignal<string | null>(null);
  async function use(choosing: Promise<Choice>): Promise<void> {
    setTrouble(null);
    const choice = await choosing;
    if (choice.ok) props.shop.remember({ model: choice.model });
    else setTrouble(choice.failure.sentence);
  }
  async function useFile(file: File): Promise<void> {
    await use(loadFromDisk(props.shop.devices, file));
  }
  return (
    <section aria-labelledby="model">
      <h2 id="model">Speech model</h2>
      <HearingStrip
        hearing={props.shop.devices.hearingState()}
        speaking={props.shop.devices.speakingState()}
        level={props.shop.devices.level()}
        sound={props.shop.devices.sound()}
        elsewhere={props.shop.devices.elsewhere()}
        onListen={() => void props.shop.devices.start()}
        onMute={() => props.shop.devices.hearing.mute('asked')}
      />
      <p>In use: {props.shop.devices.modelName() ?? 'none'}</p>
      <ul class="models">
        <For each={props.shop.offered()}>
          {(model) => (
            <li>
              <button type="button" onClick={() => void use(loadOffered(props.shop.devices, model))}>
                Use {model.file} ({(model.bytes / 1e6).toFixed(1)} MB)
              </button>
            </li>
          )}
        </For>
      </ul>
      <FileButton
        label="Use a model from disk (.zip or .tar.gz)"
        accept=".zip,.gz,.tgz"
        onFile={(file) => void useFile(file)}
      />
      <Show when={trouble()}>
        {(text) => (
          <p class="trouble" role="alert">
            {text()}
          </p>
        )}
      </Show>
    </section>
  );
}
