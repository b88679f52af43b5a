import { For, Show, type JSX } from 'solid-js';
import { secondWindow } from '../../words/second-window.ts';
import type { SecondView } from '../second-view.ts';

/** What was read lately and by whom, and what is to be decided about after the work. */
export function SecondRecord(props: { readonly view: SecondView }): JSX.Element {
  return (
    <div class="second-record">
      <section aria-labelledby="last-readings">
        <h2 id="last-readings">{secondWindow.lastReadings}</h2>
        <Show when={props.view.readings.length > 0} fallback={<p class="note">{secondWindow.noneYet}</p>}>
          <ul>
            <For each={props.view.readings}>
              {(line) => (
                <li>
                  <b>{line.place}</b> {line.value ?? secondWindow.valueKeptFromSight}, {line.status}
                  <span class="who">{line.who}</span>
                </li>
              )}
            </For>
          </ul>
        </Show>
      </section>
      <section aria-labelledby="open-points">
        <h2 id="open-points">{secondWindow.openPoints}</h2>
        <Show when={props.view.openPoints.length > 0} fallback={<p class="note">{secondWindow.none}</p>}>
          <ul>
            <For each={props.view.openPoints}>{(point) => <li>{point}</li>}</For>
          </ul>
        </Show>
      </section>
    </div>
  );
}
