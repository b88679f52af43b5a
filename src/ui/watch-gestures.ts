import { createEffect, onCleanup } from 'solid-js';
import { ANSWERS, passGate, type Answer, type Consequence, type Passage, type Strictness } from '../gesture/gate.ts';
import type { Gesture } from '../gesture/gesture.ts';
import { camera as words } from '../words/camera.ts';
import type { Devices } from './devices.ts';
import { gestureMeaning } from './gesture-meaning.ts';
import type { LiveSession } from './live-session.ts';
import type { SidesCheck } from './sides-check.ts';
import type { SwitchBoard } from './switch-board.ts';
import { wantsValue } from './switch-panel.ts';

/**
 * Takes what the camera sees to the session for as long as this screen is up; the camera goes off with it. Where a value is
 * wanted, a wave to the right begins to count it: each such wave counts one up, and a nod takes what is counted.
 */
export function watchGestures(
  { camera, speakingState, addNews }: Pick<Devices, 'camera' | 'speakingState' | 'addNews'>,
  live: LiveSession,
  switches: SwitchBoard,
  sides: SidesCheck,
  /** By how much surer the gestures of the one who works must be. */
  strictness: () => Strictness = () => ({}),
): void {
  /** When all that was to be said had been said. */
  let quietSince = -Infinity;
  createEffect(() => {
    if (speakingState().saying === null) quietSince = performance.now();
  });

  function take(gesture: Gesture): void {
    const answer = ANSWERS[gesture.kind];
    const [state, situation] = [live.state(), live.situation()];
    if ((answer === 'affirm' || answer === 'negative') && sides.isAsked()) {
      if (isPassed(gesture, 'answer', answer)) sides.takes({ kind: answer }, gesture.from);
      return;
    }
    if ((gesture.kind === 'wave right' || gesture.kind === 'wave left') && sides.isDue()) {
      const isTaken = (one: Answer): boolean => gestureMeaning(state, situation, one) !== null;
      // Which way it went is not known yet; and a nod must be an answer to one question only.
      const isFree = switches.panel() === null && !isTaken('affirm') && !isTaken('negative');
      if (!isFree || !(isTaken('next') || isTaken('back') || wantsValue(state, situation)))
        live.notTaken(gesture.kind, 'not for us');
      else if (isPassed(gesture, 'move', answer)) sides.ask(gesture.kind);
      return;
    }
    // Of choices that a pedal has opened none is taken by a gesture: each would have a gate of its own.
    const isCounting = switches.panel()?.kind === 'value' && (answer === 'affirm' || answer === 'next');
    if (isCounting || (answer === 'next' && wantsValue(state, situation))) {
      if (!isPassed(gesture, 'move', words.count)) return;
      // A nod takes what a wave has counted up; the first wave begins.
      const signal = isCounting && answer === 'next' ? 'backward' : 'forward';
      switches.give(signal, 'gesture', gesture.from, gesture.confidence);
      return;
    }
    // A step that is done is not taken back by who only wants to count no further.
    if (answer === 'back' && switches.panel() !== null) {
      if (isPassed(gesture, 'move', words.count)) switches.leave();
      return;
    }
    // A shake within a spoken “affirm” is no answer to what came after it, and need not wait for the end of that.
    if (answer === 'negative' && live.isAgainstWord(gesture)) {
      const passage = passGate(gesture, 'answer', strictness());
      if (passage.kind === 'passed') void live.see(gesture, { kind: 'negative' });
      else void addNews(sayWhy(passage, gesture, 'negative'));
      return;
    }
    const asked = gestureMeaning(state, situation, answer);
    if (asked === null) live.notTaken(gesture.kind, 'not for us');
    else if (isPassed(gesture, asked.consequence, asked.meaning.kind)) void live.see(gesture, asked.meaning);
  }

  /** Whether it comes after what it would answer was said, and is sure enough; else that is shown, or said. */
  function isPassed(gesture: Gesture, consequence: Consequence, what: string): boolean {
    // Only what has been said to its end is answered; but who wants everything to stop need not hear it out.
    const isBeforeEnd = speakingState().saying !== null || gesture.from < quietSince;
    if (isBeforeEnd && consequence !== 'pause') {
      live.notTaken(gesture.kind, 'not said yet');
      return false;
    }
    const passage = passGate(gesture, consequence, strictness());
    if (passage.kind === 'passed') return true;
    live.notTaken(gesture.kind, 'not for us');
    void addNews(sayWhy(passage, gesture, what));
    return false;
  }

  onCleanup(camera.onGesture(take));
  onCleanup(() => camera.stop());
}

const sayWhy = (passage: Exclude<Passage, { kind: 'passed' }>, { kind }: Gesture, what: string): string =>
  passage.kind === 'unsure' ? words.notSure(what) : words.notEnough(kind);
