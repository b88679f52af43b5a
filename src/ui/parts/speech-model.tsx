import { For, createSignal, type JSX } from 'solid-js';
import { speechModel } from '../../words/speech-model.ts';
import type { Shop } from '../app.tsx';
import { loadFromDisk, loadOffered, type Choice } from '../models.ts';
import { FileButton } from './file-button.tsx';
import { HearingStrip } from './hearing-strip.tsx';
import { Trouble } from './trouble.tsx';

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
  const inUse = (): string => {
    const name = props.shop.devices.modelName();
    return name === null ? speechModel.noneInUse : speechModel.inUse(name);
  };
  return (
    <section aria-labelledby="model">
      <h2 id="model">{speechModel.speechModel}</h2>
      <HearingStrip
        hearing={props.shop.devices.hearingState()}
        speaking={props.shop.devices.speakingState()}
        level={props.shop.devices.level()}
        sound={props.shop.devices.sound()}
        elsewhere={props.shop.devices.elsewhere()}
        onListen={() => void props.shop.devices.start()}
        onMute={() => props.shop.devices.hearing.mute('asked')}
      />
      <p>{inUse()}</p>
      <ul class="models">
        <For each={props.shop.offered()}>
          {(model) => (
            <li>
              <button type="button" onClick={() => void use(loadOffered(props.shop.devices, model))}>
                {speechModel.use(model.file, (model.bytes / 1e6).toFixed(1))}
              </button>
            </li>
          )}
        </For>
      </ul>
      <FileButton label={speechModel.useFromDisk} accept=".zip,.gz,.tgz" onFile={(file) => void useFile(file)} />
      <Trouble text={trouble()} />
    </section>
  );
}
