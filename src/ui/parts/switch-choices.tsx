import { For, Show, type JSX } from 'solid-js';
import { litChoices, type Scan } from '../../gesture/scan.ts';
import { valueKeys } from '../../words/value-keys.ts';
import { offered, type HandEntry } from '../hand-entry.ts';
import type { Panel } from '../switch-panel.ts';

/** What one or two switches choose from, large; its place is kept where switches are taught, so that nothing moves. */
export function SwitchChoices(props: { readonly panel: Panel | null; readonly isTaught: boolean }): JSX.Element {
  return (
    <Show when={props.isTaught || props.panel !== null}>
      <section class="switch-choices" aria-label={valueKeys.choices} aria-live="off">
        <Show when={props.panel} fallback={<p class="rest">{valueKeys.pressGoesOn}</p>}>
          {(panel) => <Opened panel={panel()} />}
        </Show>
      </section>
    </Show>
  );
}

function Opened(props: { readonly panel: Panel }): JSX.Element {
  const entry = (): HandEntry | null => (props.panel.kind === 'value' ? props.panel.entry : null);
  const scan = (): Scan<unknown> | null => {
    if (props.panel.kind === 'choices') return props.panel.scan;
    return props.panel.entry.by === 'light' ? props.panel.entry.scan : null;
  };
  return (
    <>
      <Show when={entry()}>
        {(entry) => (
          <p class="entered">
            <span class="label">{valueKeys.value}</span> <output>{entry().text || valueKeys.nothingYet}</output>
          </p>
        )}
      </Show>
      <Show when={scan()} fallback={<Counted entry={entry()} />}>
        {(scan) => (
          <ol>
            <For each={litChoices(scan())}>
              {({ label }, at) => (
                <li classList={{ lit: at() === scan().lit }} aria-current={at() === scan().lit}>
                  {label}
                </li>
              )}
            </For>
          </ol>
        )}
      </Show>
    </>
  );
}

/** One figure at a time: one switch counts it up, the other takes it. */
function Counted(props: { readonly entry: HandEntry | null }): JSX.Element {
  return (
    <Show when={props.entry}>
      {(entry) => (
        <ol>
          <li class="lit" aria-current="true">
            {offered(entry())}
          </li>
          <li class="how">{valueKeys.howCounted}</li>
        </ol>
      )}
    </Show>
  );
}
