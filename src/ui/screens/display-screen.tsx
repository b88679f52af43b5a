import { For, Show, createSignal, onMount, type JSX } from 'solid-js';
import { THEMES, type Theme } from '../../storage/display.ts';
import type { Shop } from '../app.tsx';
import type { Display } from '../display.ts';
import { addressOf, type Place } from '../router.ts';
import { DISTANCE, GLANCE, letterHeight, RULERS } from '../view/legible.ts';

/** How this screen is looked at: from how far, how large it is, in which light. It applies at once, and stays on the device. */
export function DisplayScreen(props: { readonly shop: Shop; readonly session: string | null }): JSX.Element {
  let main: HTMLElement | undefined;
  onMount(() => main?.focus());
  const back = (): { readonly to: Place; readonly words: string } =>
    props.session === null
      ? { to: { kind: 'start' }, words: 'Back to the start' }
      : { to: { kind: 'work', session: props.session }, words: 'Back to the job' };
  return (
    <main class="display-screen" ref={main} tabindex="-1">
      <header>
        <h1>Display</h1>
        <p>For this device. Everything applies at once.</p>
      </header>
      <DistanceSection display={props.shop.display} />
      <RulerSection display={props.shop.display} />
      <ThemeSection display={props.shop.display} />
      <p>
        <a class="button" href={addressOf(back().to)}>
          {back().words}
        </a>
      </p>
    </main>
  );
}

function DistanceSection(props: { readonly display: Display }): JSX.Element {
  const distance = (): number => props.display.choice().distance;
  const change = (by: number): void => {
    const after = distance() + by;
    if (after >= DISTANCE.least && after <= DISTANCE.most) props.display.change({ distance: after });
  };
  return (
    <section aria-labelledby="distance">
      <h2 id="distance">Viewing distance</h2>
      <p>From how far away is the work screen read?</p>
      <div class="stepper">
        <button type="button" aria-disabled={distance() <= DISTANCE.least} onClick={() => change(-DISTANCE.step)}>
          Nearer
        </button>
        <output aria-live="polite">{metres(distance())}</output>
        <button type="button" aria-disabled={distance() >= DISTANCE.most} onClick={() => change(DISTANCE.step)}>
          Farther
        </button>
      </div>
      <p>
        The digits of the stud number and of the value are then {letterHeight(distance(), GLANCE).toFixed(1)} mm high,
        where the screen has room for them, as here:
      </p>
      <p class="sample" aria-hidden="true">
        10 24.5
      </p>
    </section>
  );
}

/** A bar that is made as long as something whose length is known. */
function RulerSection(props: { readonly display: Display }): JSX.Element {
  const [at, setAt] = createSignal(0);
  const ruler = () => RULERS[at()] ?? RULERS[0];
  const bar = (): number => props.display.letters().pixelsPerMm * ruler().length;
  const lengthen = (by: number): void => {
    const after = bar() + by;
    if (after >= SHORTEST_BAR) props.display.calibrate(after, ruler().length);
  };
  return (
    <section aria-labelledby="ruler">
      <h2 id="ruler">Size of this screen</h2>
      <p>
        Hold something of known length against the screen, and make the bar exactly as long. Do it again on another
        screen.
      </p>
      <label>
        What is held against it
        <select onChange={(event) => setAt(event.currentTarget.selectedIndex)}>
          <For each={RULERS}>{({ name }) => <option>{name}</option>}</For>
        </select>
      </label>
      <svg class="bar" width={bar()} height="40" role="img" aria-label={`A bar for ${ruler().name}`}>
        <rect width="100%" height="100%" />
      </svg>
      <div class="stepper">
        <For each={STEPS}>
          {({ words, by }) => (
            <button type="button" onClick={() => lengthen(by)}>
              {words}
            </button>
          )}
        </For>
      </div>
      <p role="status">
        <Show
          when={props.display.choice().pixelsPerMm !== null}
          fallback="Not measured: 96 pixels an inch are taken for granted, which few screens have."
        >
          Measured on this device: {props.display.letters().pixelsPerMm.toFixed(2)} pixels to a millimetre.{' '}
          <button type="button" onClick={() => props.display.change({ pixelsPerMm: null })}>
            Forget it
          </button>
        </Show>
      </p>
    </section>
  );
}

const SHORTEST_BAR = 20;
const STEPS = [
  { words: 'Much shorter', by: -20 },
  { words: 'Shorter', by: -1 },
  { words: 'Longer', by: 1 },
  { words: 'Much longer', by: 20 },
] as const;

function ThemeSection(props: { readonly display: Display }): JSX.Element {
  return (
    <section aria-labelledby="theme">
      <h2 id="theme">Light</h2>
      <div class="choices" role="radiogroup" aria-labelledby="theme">
        <For each={THEMES}>
          {(theme) => (
            <label>
              <input
                type="radio"
                name="theme"
                checked={props.display.choice().theme === theme}
                onChange={() => props.display.change({ theme })}
              />
              {THEME_WORDS[theme]}
            </label>
          )}
        </For>
      </div>
    </section>
  );
}

const THEME_WORDS: Readonly<Record<Theme, string>> = {
  'as the device': 'As the device has it',
  light: 'Light, for a lit shop',
  dark: 'Dark, for a dim one',
  'bright sun': 'Bright sun: black on white, thick lines',
};

const metres = (value: number): string => `${value} m`;
