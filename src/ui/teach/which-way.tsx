import { Match, Show, Switch, createEffect, createMemo, createSignal, on, onCleanup, type JSX } from 'solid-js';
import { sidesSeen, type CameraHabit } from '../../gesture/camera-habit.ts';
import type { Camera } from '../../gesture/camera.ts';
import { whichWay } from '../../words/which-way.ts';

type Turn = Pick<CameraHabit, 'upsideDown' | 'mirrored'>;

/** Which way the picture comes: found out by one wave to a side that is known, and set. */
export function WhichWay(props: {
  readonly camera: Camera;
  readonly turn: Turn;
  readonly onTurn: (turn: Required<Turn>) => void;
  /** Told what a wave has shown. */
  readonly onSides: (sides: NonNullable<ReturnType<typeof sidesSeen>>) => void;
  /** Turns the camera on, where it is off. */
  readonly onCheck: () => void;
}): JSX.Element {
  const [check, setCheck] = createSignal<'not asked' | 'asked' | 'as they are' | 'changed over'>('not asked');
  // The camera stays the same as long as the page is open.
  // eslint-disable-next-line solid/reactivity
  const stop = props.camera.onGesture(({ kind }) => {
    const sides = check() === 'asked' ? sidesSeen(kind) : null;
    if (sides === null) return;
    setCheck(sides);
    props.onSides(sides);
  });
  onCleanup(stop);
  const now = (): Required<Turn> => ({
    upsideDown: props.turn.upsideDown ?? false,
    mirrored: props.turn.mirrored ?? false,
  });
  // What was found out holds no more for a picture that is taken another way.
  const turn = createMemo(() => `${now().upsideDown} ${now().mirrored}`);
  createEffect(on(turn, () => setCheck('not asked'), { defer: true }));
  const begin = (): void => {
    props.onCheck();
    setCheck('asked');
  };
  return (
    <>
      <p>{whichWay.how}</p>
      <div class="choices">
        <button type="button" onClick={begin}>
          {whichWay.check}
        </button>
      </div>
      <p role="status">
        <Switch>
          <Match when={check() === 'asked'}>{whichWay.now}</Match>
          <Match when={check() === 'as they are'}>{whichWay.asTheyAre}</Match>
        </Switch>
      </p>
      <Show when={check() === 'changed over'}>
        <p class="trouble" role="alert">
          {whichWay.changedOver}
        </p>
      </Show>
      <label class="tick">
        <input
          type="checkbox"
          checked={now().upsideDown}
          onChange={(event) => props.onTurn({ ...now(), upsideDown: event.currentTarget.checked })}
        />
        <span>{whichWay.upsideDown}</span>
      </label>
      <label class="tick">
        <input
          type="checkbox"
          checked={now().mirrored}
          onChange={(event) => props.onTurn({ ...now(), mirrored: event.currentTarget.checked })}
        />
        <span>{whichWay.mirrored}</span>
      </label>
    </>
  );
}
