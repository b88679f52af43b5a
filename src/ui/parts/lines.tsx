import { Show, type JSX } from 'solid-js';
import { sentence } from '../../language/say.ts';
import type { EventBody } from '../../session/event.ts';
import { currentStep, pendingReading } from '../../session/state.ts';
import { wantsWitness } from '../../session/witness.ts';
import { describe } from '../describe.ts';
import type { HeardLine, LiveSession } from '../live-session.ts';

const REMARKS: Readonly<Record<HeardLine['taken'], string>> = {
  taken: '',
  'not for us': ' (no phrase of this moment)',
  'too early': ' (came before this was shown: not taken)',
  'counted already': ' (said and shown at once: counted once)',
};

/** What is written of a reading that may not stand. */
const HOLDS_VALUE: ReadonlySet<EventBody['kind']> = new Set([
  'reading captured',
  'reading rejected',
  'reading disregarded',
  'witnessed',
  'disputed',
  'timed out',
  'refused',
]);

/** What was heard and what was written, always in the same two lines, and a line to type in. */
export function Lines(props: { readonly live: LiveSession; readonly onLine: (line: string) => void }): JSX.Element {
  // The second person reads off the tool, not off this screen: as long as a step is read by both, no value that they have
  // not both read stands here, not even one that was taken back.
  const isBlind = (): boolean => {
    const state = props.live.state();
    const step = currentStep(state);
    const pending = pendingReading(state);
    return step !== null && wantsWitness(state, step.id) && pending?.witnessed === undefined;
  };
  const logged = (): string => {
    const last = props.live.entries().at(-1);
    if (!last) return '';
    return isBlind() && HOLDS_VALUE.has(last.body.kind)
      ? `${sentence(last.body.kind)}; the value is not shown while two people read`
      : describe(last, props.live.state());
  };
  return (
    <div class="lines">
      <p class="heard" classList={{ ignored: props.live.heard()?.taken !== 'taken' }}>
        <b>Heard</b>{' '}
        <Show when={props.live.heard()} fallback="—">
          {(heard) => (
            <>
              {isBlind() ? 'kept from sight until the second person has read' : heard().text.replaceAll('[unk]', '…')}
              {REMARKS[heard().taken]}
            </>
          )}
        </Show>
        <Show when={props.live.ignored() > 0}>
          <span class="count"> ({props.live.ignored()} not for us)</span>
        </Show>
      </p>
      <p class="logged" role="status">
        <b>Logged</b> {props.live.entries().length - 1}: {logged()}
      </p>
      <TypedLine onLine={props.onLine} />
      <Show when={props.live.trouble()}>
        {(trouble) => (
          <p class="trouble" role="alert">
            {trouble()}
          </p>
        )}
      </Show>
    </div>
  );
}

function TypedLine(props: { readonly onLine: (line: string) => void }): JSX.Element {
  return (
    <form
      class="typed"
      onSubmit={(event) => {
        event.preventDefault();
        const field = event.currentTarget.elements.namedItem('line');
        if (!(field instanceof HTMLInputElement) || field.value.trim() === '') return;
        props.onLine(field.value);
        field.value = '';
      }}
    >
      <label>
        Type what you would say
        <input name="line" autocomplete="off" placeholder="4 24.5" />
      </label>
      <button type="submit">Enter</button>
    </form>
  );
}
