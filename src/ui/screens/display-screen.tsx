import { For, Show, createSignal, onMount, type JSX } from 'solid-js';
import { THEMES } from '../../storage/display.ts';
import { displayScreen } from '../../words/display-screen.ts';
import type { Shop } from '../app.tsx';
import type { Display } from '../display.ts';
import { BackLink } from '../parts/way-back.tsx';
import { DISTANCE, GLANCE, letterHeight, RULERS } from '../view/legible.ts';

/** How this screen is looked at: from how far, how large it is, in which light. It applies at once, and stays on the device. */
export function DisplayScreen(props: { readonly shop: Shop; readonly session: string | null }): JSX.Element {
  let main: HTMLElement | undefined;
  onMount(() => main?.focus());
  return (
    <main class="display-screen" ref={main} tabindex="-1">
      <header>
        <h1>{displayScreen.title}</h1>
        <p>{displayScreen.scope}</p>
      </header>
      <DistanceSection display={props.shop.display} />
      <RulerSection display={props.shop.display} />
      <ThemeSection display={props.shop.display} />
      <p>
        <BackLink session={props.session} />
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
      <h2 id="distance">{displayScreen.distance}</h2>
      <p>{displayScreen.distanceAsked}</p>
      <div class="stepper">
        <button type="button" aria-disabled={distance() <= DISTANCE.least} onClick={() => change(-DISTANCE.step)}>
          {displayScreen.nearer}
        </button>
        <output aria-live="polite">{displayScreen.metres(distance())}</output>
        <button type="button" aria-disabled={distance() >= DISTANCE.most} onClick={() => change(DISTANCE.step)}>
          {displayScreen.farther}
        </button>
      </div>
      <p>{displayScreen.digitsHigh(letterHeight(distance(), GLANCE))}</p>
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
  /** As it was made by hand, in CSS pixels; null as long as it is as measured last. It counts once somebody says that it fits. */
  const [made, setMade] = createSignal<number | null>(null);
  const bar = (): number => made() ?? props.display.letters().pixelsPerMm * ruler().length;
  const lengthen = (by: number): void => void setMade(Math.max(SHORTEST_BAR, bar() + by));
  const measure = (): void => {
    props.display.calibrate(bar(), ruler().length);
    setMade(null);
  };
  const holdAgainst = (index: number): void => {
    setMade(null);
    setAt(index);
  };
  return (
    <section aria-labelledby="ruler">
      <h2 id="ruler">{displayScreen.size}</h2>
      <p>{displayScreen.howToMeasure}</p>
      <label>
        {displayScreen.heldAgainst}
        <select onChange={(event) => holdAgainst(event.currentTarget.selectedIndex)}>
          <For each={RULERS}>{({ is }) => <option>{displayScreen.ruler[is]}</option>}</For>
        </select>
      </label>
      <svg
        class="bar"
        width={bar()}
        height="40"
        role="img"
        aria-label={displayScreen.barFor(displayScreen.ruler[ruler().is])}
      >
        <rect width="100%" height="100%" />
      </svg>
      <div class="stepper">
        <For each={STEPS}>
          {({ make, by }) => (
            <button type="button" onClick={() => lengthen(by)}>
              {displayScreen.make[make]}
            </button>
          )}
        </For>
      </div>
      <p>
        <button type="button" onClick={measure}>
          {displayScreen.isAsLong}
        </button>
      </p>
      <p role="status">
        <Show when={props.display.choice().pixelsPerMm !== null} fallback={displayScreen.notMeasured}>
          {displayScreen.measured(props.display.letters().pixelsPerMm)}{' '}
          <button type="button" onClick={() => props.display.change({ pixelsPerMm: null })}>
            {displayScreen.forget}
          </button>
        </Show>
      </p>
    </section>
  );
}

const SHORTEST_BAR = 20;
const STEPS = [
  { make: 'muchShorter', by: -20 },
  { make: 'shorter', by: -1 },
  { make: 'longer', by: 1 },
  { make: 'muchLonger', by: 20 },
] as const;

function ThemeSection(props: { readonly display: Display }): JSX.Element {
  return (
    <section aria-labelledby="theme">
      <h2 id="theme">{displayScreen.light}</h2>
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
              {displayScreen.theme[theme]}
            </label>
          )}
        </For>
      </div>
    </section>
  );
}
