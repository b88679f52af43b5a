import { For, Show, type JSX } from 'solid-js';
import type { SecondView } from '../second-view.ts';

/** What was read lately and by whom, and what is to be decided about after the work. */
export function SecondRecord(props: { readonly view: SecondView }): JSX.Element {
  return (
    <div class="second-record">
      <section aria-labelledby="last-readings">
        <h2 id="last-readings">Last readings</h2>
        <Show when={props.view.readings.length > 0} fallback={<p class="note">None yet.</p>}>
          <ul>
            <For each={props.view.readings}>
              {(line) => (
                <li>
                  <b>{line.place}</b> {line.value ?? 'value kept from sight'}, {line.status}
                  <span class="who">{line.who}</span>
                </li>
              )}
            </For>
          </ul>
        </Show>
      </section>
      <section aria-labelledby="open-points">
        <h2 id="open-points">Open points</h2>
        <Show when={props.view.openPoints.length > 0} fallback={<p class="note">None.</p>}>
          <ul>
            <For each={props.view.openPoints}>{(point) => <li>{point}</li>}</For>
          </ul>
        </Show>
      </section>
    </div>
  );
}
