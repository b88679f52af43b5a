import { For, Show, createResource, createSignal, untrack, type JSX } from 'solid-js';
import { loadProcedure, type Fault, type Procedure } from '../../procedure/procedure.ts';
import type { Shop } from '../app.tsx';
import { demoProcedures } from '../demos.ts';
import { loadFromDisk, loadOffered } from '../models.ts';
import { addressOf, go } from '../router.ts';
import { HearingStrip } from '../parts/hearing-strip.tsx';
import { readSession, startSession, stateAfter } from '../session-file.ts';
import { messageOf } from '../message.ts';

/** Choose a procedure, say who works, begin; or go on with a session that is kept here. */
export function StartScreen(props: { readonly shop: Shop }): JSX.Element {
  const [mechanic, setMechanic] = createSignal(untrack(() => props.shop.settings.mechanic));
  const [second, setSecond] = createSignal(untrack(() => props.shop.settings.second));
  const [faults, setFaults] = createSignal<{ file: string; faults: readonly Fault[] } | null>(null);
  const [trouble, setTrouble] = createSignal<string | null>(null);

  async function begin(text: string, file: string): Promise<void> {
    const loaded = loadProcedure(text);
    if (loaded.kind === 'faulty') {
      setFaults({ file, faults: loaded.faults });
      return;
    }
    setFaults(null);
    const people = { mechanic: mechanic().trim() || 'mechanic', second: second().trim() || null };
    props.shop.remember({ mechanic: mechanic().trim(), second: second().trim() });
    try {
      // Sound and microphone are asked for in this tap; the session does not wait for the answer.
      void props.shop.devices.start();
      go({ kind: 'work', session: await startSession(props.shop.book, JSON.parse(text), people) });
    } catch (error) {
      setTrouble(`The session could not be written to this device: ${messageOf(error)}`);
    }
  }

  async function beginFromFile(file: File): Promise<void> {
    await begin(await file.text(), file.name);
  }

  return (
    <main class="start">
      <header>
        <h1>Bothhands</h1>
        <p>
          Calls the job out, hears the answer, reads it back, and writes it down. The approved manual, local rules and
          licensed people decide; Bothhands does not.
        </p>
      </header>
      <section aria-labelledby="who">
        <h2 id="who">Who works</h2>
        <div class="fields">
          <label>
            Mechanic
            <input value={mechanic()} onInput={(event) => setMechanic(event.currentTarget.value)} autocomplete="name" />
          </label>
          <label>
            Second person
            <input value={second()} onInput={(event) => setSecond(event.currentTarget.value)} />
          </label>
        </div>
      </section>
      <section aria-labelledby="begin">
        <h2 id="begin">Begin a job</h2>
        <ul class="cards">
          <For each={demoProcedures}>
            {(demo) => (
              <li>
                <button type="button" class="card" onClick={() => void begin(demo.text, demo.file)}>
                  <ProcedureCard procedure={demo.procedure} />
                </button>
              </li>
            )}
          </For>
        </ul>
        <FileButton label="Open a procedure file" accept=".json" onFile={(file) => void beginFromFile(file)} />
        <Show when={faults()}>{(found) => <FaultList file={found().file} faults={found().faults} />}</Show>
        <Show when={trouble()}>{(text) => <p class="trouble">{text()}</p>}</Show>
      </section>
      <KeptSessions shop={props.shop} />
      <SpeechModel shop={props.shop} />
    </main>
  );
}

function ProcedureCard(props: { readonly procedure: Procedure }): JSX.Element {
  return (
    <>
      <b>{props.procedure.title}</b>
      <span>
        {props.procedure.source.document}, revision {props.procedure.source.revision}
      </span>
      <span>{props.procedure.steps.length} steps</span>
      <Show when={props.procedure.invented}>
        <span class="invented">Demonstration: all values are invented</span>
      </Show>
    </>
  );
}

function FaultList(props: { readonly file: string; readonly faults: readonly Fault[] }): JSX.Element {
  return (
    <div class="trouble" role="alert">
      <p>
        {props.file} cannot be used. {props.faults.length === 1 ? 'One thing is' : `${props.faults.length} things are`}{' '}
        wrong in it:
      </p>
      <ul>
        <For each={props.faults}>
          {(fault) => (
            <li>
              <code>{fault.path || 'the file'}</code>: {fault.message}
            </li>
          )}
        </For>
      </ul>
    </div>
  );
}

function KeptSessions(props: { readonly shop: Shop }): JSX.Element {
  const [sessions] = createResource(async () => {
    const ids = await props.shop.book.sessions();
    return Promise.all(
      ids.map(async (id) => {
        const kept = await readSession(props.shop.book, id).catch(() => null);
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

function SpeechModel(props: { readonly shop: Shop }): JSX.Element {
  const remember = (model: Shop['settings']['model'] | null): void => {
    if (model) props.shop.remember({ model });
  };
  async function useFromDisk(file: File): Promise<void> {
    remember(await loadFromDisk(props.shop.devices, file));
  }
  return (
    <section aria-labelledby="model">
      <h2 id="model">Speech model</h2>
      <HearingStrip
        hearing={props.shop.devices.hearingState()}
        speaking={props.shop.devices.speakingState()}
        level={props.shop.devices.level()}
        missing={[]}
        onListen={() => void props.shop.devices.start()}
        onMute={() => props.shop.devices.hearing.mute('asked')}
      />
      <p>In use: {props.shop.devices.modelName() ?? 'none'}</p>
      <ul class="models">
        <For each={props.shop.offered}>
          {(model) => (
            <li>
              <button type="button" onClick={() => void loadOffered(props.shop.devices, model).then(remember)}>
                Use {model.file} ({(model.bytes / 1e6).toFixed(1)} MB)
              </button>
            </li>
          )}
        </For>
      </ul>
      <FileButton
        label="Use a model from disk (.zip or .tar.gz)"
        accept=".zip,.gz,.tgz"
        onFile={(file) => void useFromDisk(file)}
      />
    </section>
  );
}

function FileButton(props: {
  readonly label: string;
  readonly accept: string;
  readonly onFile: (file: File) => void;
}): JSX.Element {
  return (
    <label class="button file">
      {props.label}
      <input
        type="file"
        accept={props.accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file) props.onFile(file);
          event.currentTarget.value = '';
        }}
      />
    </label>
  );
}
