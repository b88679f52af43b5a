import { Match, Switch, createResource, createSignal, onCleanup, untrack, type Accessor, type JSX } from 'solid-js';
import { openRecordBook } from '../storage/record-book.ts';
import { keepDraft, loadDraft, type PreparationDraft } from '../storage/preparation-draft.ts';
import type { Bindings } from '../gesture/bindings.ts';
import type { CameraHabit } from '../gesture/camera-habit.ts';
import type { Habit } from '../storage/habits.ts';
import { loadSettings, saveSettings, type Settings } from '../storage/settings.ts';
import { loadVoices, type Voice } from '../storage/voices.ts';
import { program } from '../words/program.ts';
import { today } from './clock.ts';
import { createDevices, type Devices } from './devices.ts';
import { createDisplay, type Display } from './display.ts';
import { cameraBook, muteBook, switchBook, touchBook, type TouchHabit } from './hand-habits.ts';
import { loadChosenModel, offeredModels, type OfferedModel } from './models.ts';
import { createPlace, type Place } from './router.ts';
import {
  CheckScreen,
  DisplayScreen,
  EditorScreen,
  PrepareScreen,
  ReplayScreen,
  SecondScreen,
  TeachScreen,
  WorkScreen,
} from './screens.ts';
import { StartScreen } from './screens/start-screen.tsx';
import { lackingIn } from './lacks.ts';
import { messageOf } from './message.ts';
import { Lacks } from './parts/this-program.tsx';
import { createVersions, type Versions } from './versions.ts';

/** What every screen may use. */
export interface Shop {
  readonly book: ReturnType<typeof openRecordBook>;
  readonly devices: Devices;
  /** How this screen is looked at. */
  readonly display: Display;
  readonly settings: Settings;
  /** Speech models that lie beside the app; grows when their list arrives. */
  readonly offered: Accessor<readonly OfferedModel[]>;
  remember(change: Partial<Settings>): void;
  /** How people were heard at their last microphone checks, as kept on this device. */
  readonly voices: Accessor<readonly Voice[]>;
  setVoices(voices: readonly Voice[]): void;
  /** The switches that people have taught on this device. */
  readonly switches: Accessor<readonly Habit<Bindings>[]>;
  setSwitches(switches: readonly Habit<Bindings>[]): void;
  readonly versions: Versions;
  /** How people touch the screen of this device. */
  readonly touch: Accessor<readonly Habit<TouchHabit>[]>;
  setTouch(touch: readonly Habit<TouchHabit>[]): void;
  /** How people are watched by the camera of this device. */
  readonly watched: Accessor<readonly Habit<CameraHabit>[]>;
  setWatched(watched: readonly Habit<CameraHabit>[]): void;
  /** Who left the microphone muted on this device. */
  readonly muted: Accessor<readonly Habit<boolean>[]>;
  setMuted(muted: readonly Habit<boolean>[]): void;
  /** The preparation that is under way; null where there is none. */
  readonly preparation: Accessor<PreparationDraft | null>;
  /** Replaces it, here and on this device. */
  setPreparation(draft: PreparationDraft | null): void;
}

export function App(): JSX.Element {
  const place = createPlace();
  const display = createDisplay();
  const second = (): string | null => {
    const at = place();
    return at.kind === 'second' ? at.session : null;
  };
  return (
    <Switch fallback={<Shopfloor place={place()} display={display} />}>
      <Match when={second()} keyed>
        {(session) => <SecondScreen session={session} />}
      </Match>
    </Switch>
  );
}

/** Every screen that has ear and voice. The second person's window is none of them: it never opens either. */
function Shopfloor(props: { readonly place: Place; readonly display: Display }): JSX.Element {
  const [shop] = createResource(() => openShop(untrack(() => props.display)));
  onCleanup(() => {
    void shop()?.devices.hearing.close();
    void shop()?.devices.speaking.close();
  });
  return (
    <Switch fallback={<p class="opening">{program.opening}</p>}>
      <Match when={shop.error as unknown}>
        {(error) => (
          <div class="opening" role="alert">
            <p>{program.cannotOpen(messageOf(error()))}</p>
            <Lacks lacking={lackingIn(globalThis)} />
          </div>
        )}
      </Match>
      <Match when={shop()}>{(ready) => <Screen shop={ready()} place={props.place} />}</Match>
    </Switch>
  );
}

function Screen(props: { readonly shop: Shop; readonly place: Place }): JSX.Element {
  return (
    <Switch fallback={<StartScreen shop={props.shop} />}>
      <Match when={props.place.kind === 'work' && props.place.session} keyed>
        {(session) => <WorkScreen shop={props.shop} session={session} />}
      </Match>
      <Match when={props.place.kind === 'prepare' && props.shop.preparation() !== null}>
        <PrepareScreen shop={props.shop} />
      </Match>
      <Match when={props.place.kind === 'check' && props.place} keyed>
        {({ person, session }) => <CheckScreen shop={props.shop} person={person} session={session} />}
      </Match>
      <Match when={props.place.kind === 'display' && props.place}>
        {(display) => <DisplayScreen shop={props.shop} session={display().session} />}
      </Match>
      <Match when={props.place.kind === 'replay' && props.place.session} keyed>
        {(session) => <ReplayScreen shop={props.shop} session={session} />}
      </Match>
      <Match when={props.place.kind === 'teach' && props.place}>
        {(teach) => <TeachScreen shop={props.shop} session={teach().session} />}
      </Match>
      <Match when={props.place.kind === 'editor'}>
        <EditorScreen shop={props.shop} />
      </Match>
    </Switch>
  );
}

async function openShop(display: Display): Promise<Shop> {
  let settings = await loadSettings();
  const book = openRecordBook();
  const devices = createDevices(settings.voice);
  devices.setSpeed(settings.speed);
  devices.setTones(settings.tones);
  const [offered, setOffered] = createSignal<readonly OfferedModel[]>([]);
  const [voices, setVoices] = createSignal(await loadVoices());
  const [switches, setSwitches] = createSignal(await switchBook.load());
  const [touch, setTouch] = createSignal(await touchBook.load());
  const [watched, setWatched] = createSignal(await cameraBook.load());
  const [muted, setMuted] = createSignal(await muteBook.load());
  const [preparation, setPreparation] = createSignal(await loadDraft(today()));
  const remember = (change: Partial<Settings>): void => {
    settings = { ...settings, ...change };
    void saveSettings(settings);
  };
  async function loadModel(): Promise<void> {
    const models = await offeredModels(settings.model !== undefined);
    setOffered(models);
    const choice = await loadChosenModel(devices, settings.model, models);
    if (choice?.ok) remember({ model: choice.model });
  }
  // The screen does not wait for a server that may be gone, nor for the model.
  const versions = createVersions(loadModel());
  // What a broken line kept away comes when the line is back.
  window.addEventListener('online', () => {
    if (devices.modelName() === null && devices.hearingState().kind !== 'loading') void loadModel();
  });
  return {
    book,
    devices,
    display,
    get settings() {
      return settings;
    },
    offered,
    remember,
    voices,
    setVoices,
    switches,
    setSwitches,
    versions,
    touch,
    setTouch,
    watched,
    setWatched,
    muted,
    setMuted,
    preparation,
    setPreparation(draft) {
      setPreparation(draft);
      void keepDraft(draft);
    },
  };
}
