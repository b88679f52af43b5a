import type { Accessor } from 'solid-js';
import type { TouchThresholds } from '../gesture/touch-thresholds.ts';
import { habitOf } from '../storage/habits.ts';
import type { Shop } from './app.tsx';
import { TOUCH_AT_FIRST, touchBook, type TouchHabit } from './hand-habits.ts';
import type { WorkView } from './view.ts';

/** The two halves of the work screen, as the one who works wants them. */
export interface HalvesChoice {
  /** They are wanted, and nothing has to be reached beneath. */
  readonly isShown: Accessor<boolean>;
  readonly thresholds: Accessor<TouchThresholds>;
  /** They are wanted no more, until the teach page says so again. */
  leave(): Promise<void>;
}

export function createHalves(shop: Shop, mechanic: Accessor<string>, view: Accessor<WorkView>): HalvesChoice {
  const habit = (): TouchHabit => habitOf(shop.touch(), mechanic()) ?? TOUCH_AT_FIRST;
  return {
    isShown: () => habit().halves && !wantsFreeScreen(view()),
    thresholds: () => habit().thresholds,
    async leave() {
      shop.setTouch(await touchBook.keep({ name: mechanic(), value: { ...habit(), halves: false } }));
    },
  };
}

/** Where a name, a reason or a date is typed, or one of many is chosen. */
const wantsFreeScreen = (view: WorkView): boolean =>
  view.phase === 'closed' ||
  view.closing !== null ||
  view.spent !== null ||
  view.wantsInspector ||
  view.handingOver ||
  view.deviation !== null;
