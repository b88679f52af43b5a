import {
  ErrorBoundary,
  Match,
  Show,
  Switch,
  createMemo,
  createResource,
  createSignal,
  untrack,
  type JSX,
} from 'solid-js';
import { openedRecord } from '../../words/opened-record.ts';
import { ways } from '../../words/ways.ts';
import type { Shop } from '../app.tsx';
import { deviceThumbprint, expectSeal } from '../device-seal.ts';
import { messageOf } from '../message.ts';
import { WayBack } from '../parts/way-back.tsx';
import { WorkPanel } from '../parts/work-panel.tsx';
import { createPen } from '../pen-of-screen.ts';
import { addressOf } from '../router.ts';
import { readSession, stateAfter, type KeptSession } from '../session-file.ts';
import { workView } from '../view.ts';
import { Bench } from './bench.tsx';

/** A session under the hands: this window writes it where it holds the pen, else it only shows it. */
export function WorkScreen(props: { readonly shop: Shop; readonly session: string }): JSX.Element {
  const { book } = untrack(() => props.shop);
  const session = untrack(() => props.session);
  const [attempt, setAttempt] = createSignal(0);
  const pen = createPen(session);
  const [opened] = createResource(attempt, async () => {
    const [writes, kept] = [await pen(), await readSession(book, session)];
    // Before it can be closed; where the browser keeps no seals, work goes on, and that is said at the end.
    await expectSeal(kept).catch(() => undefined);
    return { writes, kept, device: await deviceThumbprint() };
  });
  return (
    <ErrorBoundary fallback={(error: unknown) => <WayBack>{messageOf(error)}</WayBack>}>
      <Switch fallback={<p class="opening">{openedRecord.opening}</p>}>
        <Match when={opened.error as unknown}>{(error) => <WayBack>{messageOf(error())}</WayBack>}</Match>
        <Match when={opened()}>
          {(found) => (
            <Show
              when={found().writes && found().kept.verification.kind === 'intact'}
              fallback={<ReadOnly kept={found().kept} onAgain={() => setAttempt((count) => count + 1)} />}
            >
              <Bench shop={props.shop} kept={found().kept} device={found().device} />
            </Show>
          )}
        </Match>
      </Switch>
    </ErrorBoundary>
  );
}

function ReadOnly(props: { readonly kept: KeptSession; readonly onAgain: () => void }): JSX.Element {
  const why = (): string =>
    props.kept.verification.kind === 'broken'
      ? openedRecord.broken(props.kept.verification.at, props.kept.verification.why)
      : openedRecord.writtenElsewhere;
  const view = createMemo(() =>
    workView(stateAfter(props.kept, props.kept.entries.length), props.kept.entries.at(-1)?.body),
  );
  return (
    <main class="work">
      <p class="read-only" role="alert">
        <a href={addressOf({ kind: 'start' })}>{ways.allSessions}</a> {why()}{' '}
        <button type="button" onClick={() => props.onAgain()}>
          {openedRecord.lookAgain}
        </button>
      </p>
      <WorkPanel view={view()} />
    </main>
  );
}
