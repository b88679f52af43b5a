import { For, Show, createResource, untrack, type JSX } from 'solid-js';
import type { Shop } from '../app.tsx';
import { addressOf } from '../router.ts';
import { readSession, stateAfter } from '../session-file.ts';

/** The sessions that this browser keeps: to go on with, or to play back. */
export function KeptSessions(props: { readonly shop: Shop }): JSX.Element {
  const { book } = untrack(() => props.shop);
  const [sessions] = createResource(async () => {
    const ids = await book.sessions();
    return Promise.all(
      ids.map(async (id) => {
        const kept = await readSession(book, id).catch(() => null);
        return kept ? { id, kept, state: stateAfter(kept, kept.entries.length) } : null;
      }),
    );
  });
  return (
    <section aria-labelledby="kept">
      <h2 id="kept">Sessions on this device</h2>
      <ul class="sessions">
        <For each={sessions()?.filter((session) => session !== null)} fallback={<li>None yet.</li>}>
          {({ id, kept, state }) => (
            <li>
              <span>
                <b>{kept.procedure.title}</b>
                <br />
                {new Date(kept.entries[0]?.at.utc ?? 0).toLocaleString()}, {kept.people.mechanic}:{' '}
                {state.phase === 'closed' ? 'closed' : `at step ${state.at + 1} of ${kept.procedure.steps.length}`}
              </span>
              <Show when={state.phase !== 'closed'}>
                <a class="button" href={addressOf({ kind: 'work', session: id })}>
                  Go on
                </a>
              </Show>
              <a class="button" href={addressOf({ kind: 'replay', session: id })}>
                Replay
              </a>
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}
