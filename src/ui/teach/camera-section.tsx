import { For, Show, createEffect, createMemo, createSignal, on, onCleanup, type JSX } from 'solid-js';
import {
  CAMERA_AT_FIRST,
  readCameraHabit,
  unchecked,
  watchedAs,
  type CameraHabit,
} from '../../gesture/camera-habit.ts';
import type { Region } from '../../gesture/frame.ts';
import { ANSWERS } from '../../gesture/gate.ts';
import type { Gesture, GestureKind } from '../../gesture/gesture.ts';
import { isSamePerson } from '../../session/people.ts';
import { teachScreen } from '../../words/teach-screen.ts';
import type { Shop } from '../app.tsx';
import { cameraBook } from '../hand-habits.ts';
import { CameraStrip } from '../parts/camera-strip.tsx';
import { AmountField } from './amount-field.tsx';
import { Faults } from './faults.tsx';
import { KeptLine } from './kept-line.tsx';
import { WhichWay } from './which-way.tsx';

const KINDS = ['nod', 'shake', 'wave right', 'wave left', 'cover'] as const satisfies readonly GestureKind[];

const EDGES = ['left', 'top', 'width', 'height'] as const satisfies readonly (keyof Region)[];

/** Gestures before the camera, tried: what was seen, how surely, and why; and how one person wants to be watched. */
export function CameraSection(props: { readonly shop: Shop; readonly person: string }): JSX.Element {
  // The devices stay the same as long as the page is open.
  // eslint-disable-next-line solid/reactivity
  const { camera } = props.shop.devices;
  const kept = createMemo(() => props.shop.watched().find(({ name }) => isSamePerson(name, props.person))?.value);
  const [draft, setDraft] = createSignal<CameraHabit>(CAMERA_AT_FIRST);
  const [faults, setFaults] = createSignal<readonly { readonly message: string }[]>([]);
  const [seen, setSeen] = createSignal<readonly Gesture[]>([]);
  // What is not kept of one person is nobody else's.
  createEffect(
    on([kept, () => props.person], ([now]) => {
      setDraft(now ?? CAMERA_AT_FIRST);
      setFaults([]);
    }),
  );
  onCleanup(camera.onGesture((gesture) => setSeen((before) => [gesture, ...before].slice(0, MOST_SHOWN))));
  onCleanup(() => camera.stop());

  async function change(to: CameraHabit): Promise<void> {
    setDraft(to);
    const read = readCameraHabit(to);
    setFaults(read.kind === 'faulty' ? read.faults : []);
    if (read.kind === 'faulty') return;
    if (camera.state.kind === 'watching') camera.start(watchedAs(to));
    props.shop.setWatched(await cameraBook.keep({ name: props.person, value: read.habit }));
  }

  const forget = async (): Promise<void> => {
    const left = await cameraBook.forget(props.person);
    props.shop.setWatched(left);
  };
  return (
    <section aria-labelledby="camera">
      <h2 id="camera">{teachScreen.camera.title}</h2>
      <CameraStrip
        state={props.shop.devices.cameraState()}
        onStart={() => camera.start(watchedAs(draft()))}
        onStop={() => camera.stop()}
      />
      <ol class="tried" aria-live="polite" aria-label={teachScreen.camera.seen}>
        <For each={seen()} fallback={<li>{teachScreen.nothingYet}</li>}>
          {({ kind, confidence, why }) => (
            <li>
              {teachScreen.camera.tried(
                teachScreen.camera.gestures[kind],
                percent(confidence),
                teachScreen.camera.answers[ANSWERS[kind]],
              )}
              <Show when={why}> {teachScreen.camera.because(why)}</Show>
            </li>
          )}
        </For>
      </ol>
      <WhichWay turn={draft()} onTurn={(turn) => void change({ ...unchecked(draft()), ...turn })} />
      <p>{teachScreen.camera.askForSurer}</p>
      <div class="amounts">
        <For each={KINDS}>
          {(kind) => (
            <AmountField
              label={teachScreen.camera.surer[kind]}
              unit="%"
              step={5}
              value={percent(draft().strictness[kind] ?? 0)}
              onChange={(value) =>
                void change({ ...draft(), strictness: { ...draft().strictness, [kind]: value / 100 } })
              }
            />
          )}
        </For>
      </div>
      <p>{teachScreen.camera.onlyThisPart}</p>
      <div class="amounts">
        <For each={EDGES}>
          {(of) => (
            <AmountField
              label={teachScreen.camera.edges[of]}
              unit="%"
              step={5}
              value={percent(draft().region[of])}
              onChange={(value) => void change({ ...draft(), region: within(draft().region, of, value / 100) })}
            />
          )}
        </For>
        <svg class="region" viewBox="0 0 160 120" role="img" aria-label={teachScreen.camera.watchedPart}>
          <rect class="picture" width="160" height="120" />
          <rect
            class="watched"
            x={160 * draft().region.left || 0}
            y={120 * draft().region.top || 0}
            width={Math.max(0, 160 * draft().region.width) || 0}
            height={Math.max(0, 120 * draft().region.height) || 0}
          />
        </svg>
      </div>
      <Faults faults={faults()} />
      <KeptLine
        person={props.person}
        isKept={kept() !== undefined}
        otherwise={teachScreen.camera.nothingSet}
        onForget={forget}
      />
    </section>
  );
}

/** One edge changed: its counterpart gives way, so that the part stays in the picture. */
function within(region: Region, of: keyof Region, part: number): Region {
  const changed = { ...region, [of]: part };
  const fitted = (one: number): number => Math.min(1, Math.max(0, one));
  switch (of) {
    case 'left':
      return { ...changed, width: fitted(Math.min(region.width, 1 - part)) };
    case 'width':
      return { ...changed, left: fitted(Math.min(region.left, 1 - part)) };
    case 'top':
      return { ...changed, height: fitted(Math.min(region.height, 1 - part)) };
    case 'height':
      return { ...changed, top: fitted(Math.min(region.top, 1 - part)) };
  }
}

const MOST_SHOWN = 4;

const percent = (part: number): number => Math.round(part * 100);
