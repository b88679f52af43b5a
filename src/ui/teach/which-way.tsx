import type { JSX } from 'solid-js';
import type { CameraHabit } from '../../gesture/camera-habit.ts';
import { whichWay } from '../../words/which-way.ts';

type Turn = Pick<CameraHabit, 'upsideDown' | 'mirrored'>;

/** Which way the picture comes, set by hand. Whether that is right, the first wave at work asks. */
export function WhichWay(props: { readonly turn: Turn; readonly onTurn: (turn: Required<Turn>) => void }): JSX.Element {
  const now = (): Required<Turn> => ({
    upsideDown: props.turn.upsideDown ?? false,
    mirrored: props.turn.mirrored ?? false,
  });
  return (
    <>
      <p>{whichWay.how}</p>
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
