import { createEffect, onCleanup } from 'solid-js';
import { ANSWERS, passGate, type Strictness } from '../gesture/gate.ts';
import type { Gesture } from '../gesture/gesture.ts';
import type { Devices } from './devices.ts';
import { gestureMeaning } from './gesture-meaning.ts';
import type { LiveSession } from './live-session.ts';

/** Takes what the camera sees to the session for as long as this screen is up; the camera goes off with it. */
export function watchGestures(
  { camera, speakingState, addNews }: Pick<Devices, 'camera' | 'speakingState' | 'addNews'>,
  live: LiveSession,
  /** By how much surer the gestures of the one who works must be. */
  strictness: () => Strictness = () => ({}),
): void {
  /** When all that was to be said had been said. */
  let quietSince = -Infinity;
  createEffect(() => {
    if (speakingState().saying === null) quietSince = performance.now();
  });

  function take(gesture: Gesture): void {
    const asked = gestureMeaning(live.state(), live.situation(), ANSWERS[gesture.kind]);
    if (asked === null) {
      live.notTaken(gesture.kind, 'not for us');
      return;
    }
    const { meaning, consequence } = asked;
    // Only what has been said to its end is answered; but who wants everything to stop need not hear it out.
    const isBeforeEnd = speakingState().saying !== null || gesture.from < quietSince;
    if (isBeforeEnd && consequence !== 'pause') {
      live.notTaken(gesture.kind, 'too early');
      return;
    }
    const passage = passGate(gesture, consequence, strictness());
    switch (passage.kind) {
      case 'passed':
        return void live.see(gesture, meaning);
      case 'unsure':
        live.notTaken(gesture.kind, 'not for us');
        return void addNews(`Not sure: ${meaning.kind}? Once more, or say it.`);
      case 'own word':
        live.notTaken(gesture.kind, 'not for us');
        return void addNews(`Say it, or tap: a ${gesture.kind} is not enough here.`);
    }
  }

  onCleanup(camera.onGesture(take));
  onCleanup(() => camera.stop());
}
