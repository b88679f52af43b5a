import { createEffect, createMemo, onCleanup, type Accessor } from 'solid-js';
import { sayWaitOver } from '../language/say-observed.ts';
import { waitOf } from '../session/observed.ts';
import { currentStep, type SessionState } from '../session/state.ts';

/** Has it said when the wait of a step is over: once, and nothing is written of it, since the value is. */
export function createWaitClock(
  state: Accessor<SessionState>,
  now: () => string,
  onOver: (text: string) => void,
): void {
  const step = createMemo(() => {
    const current = currentStep(state());
    return current?.kind === 'measure' && state().waits.has(current.id) ? current : null;
  });
  createEffect(() => {
    const waiting = step();
    if (!waiting) return;
    const left = waitOf(state(), waiting, now());
    if (typeof left !== 'number' || left === 0) return;
    const timer = setTimeout(() => onOver(sayWaitOver(waiting)), left * 1000);
    onCleanup(() => clearTimeout(timer));
  });
}
