import { createEffect, createMemo, createSignal, on, onCleanup, untrack, type Accessor } from 'solid-js';
import { DEFAULT_BINDINGS, whileChoosing, type Bindings, type Signal } from '../gesture/bindings.ts';
import { watchSwitches } from '../gesture/keys.ts';
import { typedWords } from '../language/typed.ts';
import type { Meaning, Source } from '../session/intent.ts';
import type { Devices } from './devices.ts';
import type { LiveSession } from './live-session.ts';
import { meaningOf } from './signals.ts';
import {
  choicesNow,
  litWords,
  panelMovedOn,
  panelTaken,
  valuePanel,
  wantsValue,
  type Panel,
  type PanelStep,
} from './switch-panel.ts';

interface Fittings {
  readonly live: LiveSession;
  readonly devices: Pick<Devices, 'wake' | 'speakingState' | 'announce'>;
  /** What the one who works has taught; null where nothing: then keys do what they do out of the box. */
  readonly taught: Accessor<Bindings | null>;
}

/** Keys, pedals and headset buttons at work, and the choices that they open. */
export interface SwitchBoard {
  /** What is to be chosen from; null while nothing is. */
  readonly panel: Accessor<Panel | null>;
  /**
   * Takes a signal of another device than switches.
   * @param began when it began, in milliseconds on the clock of the page
   * @param sureness how surely it was seen, 0 to 1
   */
  give(signal: Signal, source: Source, began: number, sureness?: number): void;
  /** Closes what is to be chosen from; nothing is taken. */
  leave(): void;
}

/** Listens to the switches for as long as the owner lives. */
export function createSwitchBoard({ live, devices, taught }: Fittings): SwitchBoard {
  const [panel, setPanel] = createSignal<Panel | null>(null);
  /** The least sureness of what has opened the panel and chosen in it. */
  let leastSure = 1;
  const bindings = (): Bindings => taught() ?? DEFAULT_BINDINGS;
  const source = (): Source => (taught() === null ? 'key' : 'pedal');
  /**
   * Two halves of a screen are two switches, whatever is taught beside them; so are a nod and a wave, and a light would
   * have gone on before a nod is over.
   */
  const entryBy = (by: Source) => (by === 'touch' || by === 'gesture' || bindings().pace === null ? 'count' : 'light');

  /** A switch that means many things affirms only what has been said to its end: a foot is not an eye. */
  function mean(meaning: Meaning, by: Source, began: number): void {
    if (meaning.kind === 'affirm' && devices.speakingState().saying !== null) live.tooEarly(meaning);
    else void live.act(meaning, by, began, false);
  }

  /** The same loop as for what is said: it is read back, doubted where that is due, and counts only once affirmed. */
  const read = (value: string, by: Source): void =>
    void live.hear({ words: typedWords(value).map((word) => ({ word, confidence: 1 })), sureness: leastSure }, by);

  function carryOut(step: PanelStep, by: Source, began: number): void {
    setPanel(step.kind === 'panel' ? step.panel : null);
    // Chosen by its name on the screen, as a button is.
    if (step.kind === 'means') void live.act(step.meaning, by, began, true);
    if (step.kind === 'value') read(step.value, by);
  }

  function give(signal: Signal, by: Source, began: number, sureness = 1): void {
    devices.wake();
    const open = panel();
    leastSure = open ? Math.min(leastSure, sureness) : sureness;
    if (open && (signal === 'forward' || signal === 'pick')) return carryOut(panelTaken(open, entryBy(by)), by, began);
    if (open && signal === 'backward') return void setPanel(panelMovedOn(open));
    setPanel(null);
    const [state, situation] = [live.state(), live.situation()];
    const isValueWanted = wantsValue(state, situation);
    if (signal === 'pick') return void setPanel(choicesNow(state, situation));
    if (signal === 'value' || (signal === 'forward' && by !== 'key' && isValueWanted)) {
      if (isValueWanted) setPanel(valuePanel(entryBy(by)));
      return;
    }
    mean(meaningOf(signal, state, situation), by, began);
  }

  const isChoosing = createMemo(() => panel() !== null);
  createEffect(() => {
    const own = bindings();
    // The same watch while choosing: the bounce of the press that opened the choices takes none of them.
    const now = (): Bindings => (untrack(isChoosing) ? whileChoosing(own) : own);
    onCleanup(
      watchSwitches(now, ({ signal, from, sureness }) =>
        untrack(() => signal !== null && give(signal, source(), from, sureness)),
      ),
    );
  });
  // What could be chosen may not be meant any more: whoever chooses sees what has changed first.
  createEffect(on(live.entries, () => setPanel(null), { defer: true }));
  createEffect(() => {
    const open = panel();
    if (open === null) return;
    const { pace, isSpoken } = untrack(bindings);
    // Never in place of what the work itself says.
    const isQuiet = untrack(devices.speakingState).saying === null;
    const said = isSpoken && isQuiet ? devices.announce([litWords(open)]) : Promise.resolve();
    // What is counted waits for its counter.
    if (pace === null || (open.kind === 'value' && open.entry.by === 'count')) return;
    let isOver = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    // Who listens for a choice hears it to its end first.
    void said.then(() => {
      if (!isOver) timer = setTimeout(() => setPanel(panelMovedOn(open)), pace);
    });
    onCleanup(() => {
      isOver = true;
      clearTimeout(timer);
    });
  });
  return { panel, give, leave: () => setPanel(null) };
}
