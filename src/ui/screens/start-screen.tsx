import { For, Show, createMemo, createSignal, untrack, type JSX, type Signal } from 'solid-js';
import { loadProcedure, type Fault, type Procedure } from '../../procedure/procedure.ts';
import type { SessionFile } from '../../record/sealed-file.ts';
import { isSamePerson } from '../../session/people.ts';
import { startScreen } from '../../words/start-screen.ts';
import type { Shop } from '../app.tsx';
import { demos, type Demo } from '../demos.ts';
import { handedOver } from '../handed-over.ts';
import { messageOf } from '../message.ts';
import { beginPreparing } from '../prepare/begin-preparing.ts';
import { addressOf } from '../router.ts';
import { CheckLinks } from '../parts/check-links.tsx';
import { FileButton } from '../parts/file-button.tsx';
import { PracticeOffer } from '../parts/practice-offer.tsx';
import { SpeechModel } from '../parts/speech-model.tsx';
import { ThisProgram } from '../parts/this-program.tsx';
import { SoundChoices } from '../parts/sound-choices.tsx';
import { KeptSessions, SealedFileReplay } from '../screens.ts';
import { Trouble } from '../parts/trouble.tsx';

/** Choose a procedure, say who works, begin; or go on with a session that is kept here. */
export function StartScreen(props: { readonly shop: Shop }): JSX.Element {
  const [mechanic, setMechanic] = createSignal(untrack(() => props.shop.settings.mechanic));
  const [second, setSecond] = createSignal(untrack(() => props.shop.settings.second));
  // Asked anew for each session, and no unless it is said: sound is of people, not of the part.
  const [isSoundAgreed, setSoundAgreed] = createSignal(false);
  const [faults, setFaults] = createSignal<{ file: string; faults: readonly Fault[] } | null>(null);
  const [trouble, setTrouble] = createSignal<string | null>(null);
  const [sealed, setSealed] = createSignal<{ readonly name: string; readonly file: SessionFile } | null>(null);

  const preparing = createMemo(() => {
    const draft = props.shop.preparation();
    const loaded = draft && loadProcedure(draft.text);
    return loaded?.kind === 'loaded' ? loaded.procedure.title : null;
  });
  let nameField: HTMLInputElement | undefined;

  /** What was wrong with the names may be right now; who is named now has agreed to nothing. */
  function named([before, set]: Signal<string>, name: string): void {
    if (before() !== name) setSoundAgreed(false);
    set(name);
    setTrouble(null);
  }

  /** The way to the work leads through its preparation. */
  function begin(text: string, file: string): void {
    const loaded = loadProcedure(text);
    if (loaded.kind === 'faulty') {
      setFaults({ file, faults: loaded.faults });
      return;
    }
    setFaults(null);
    if (mechanic().trim() === '') {
      setTrouble(startScreen.nameMissing);
      nameField?.focus();
      return;
    }
    if (isSamePerson(mechanic(), second())) {
      setTrouble(startScreen.samePerson);
      return;
    }
    setTrouble(null);
    props.shop.remember({ mechanic: mechanic().trim(), second: second().trim() });
    beginPreparing(props.shop, { text, file, sound: isSoundAgreed() ? 'agreed' : 'not agreed' });
  }

  async function openSealed(file: File): Promise<void> {
    const { openSealedFile } = await import('../job-screens.ts');
    setSealed({ name: file.name, file: await openSealedFile(file) });
  }

  async function beginFromFile(file: File): Promise<void> {
    const text = await file.text().catch((error: unknown) => {
      const message = startScreen.notRead(messageOf(error));
      setFaults({ file: file.name, faults: [{ path: '', message }] });
      return null;
    });
    if (text !== null) begin(text, file.name);
  }

  return (
    <Show
      when={sealed()}
      fallback={
        <main class="start">
          <header>
            <h1>{startScreen.program}</h1>
            <p>{startScreen.whatItDoes}</p>
            <p>
              <a href={addressOf({ kind: 'display', session: null })}>{startScreen.display}</a>
            </p>
            <p>
              <a
                href={addressOf({ kind: 'teach', session: null })}
                onClick={() => props.shop.remember({ mechanic: mechanic().trim(), second: second().trim() })}
              >
                {startScreen.teach}
              </a>
            </p>
          </header>
          <section aria-labelledby="who">
            <h2 id="who">{startScreen.whoWorks}</h2>
            <div class="fields">
              <label>
                {startScreen.mechanic}
                <input
                  ref={nameField}
                  value={mechanic()}
                  onInput={(event) => named([mechanic, setMechanic], event.currentTarget.value)}
                  autocomplete="name"
                />
              </label>
              <label>
                {startScreen.second}
                <input value={second()} onInput={(event) => named([second, setSecond], event.currentTarget.value)} />
              </label>
            </div>
            <Trouble text={trouble()} />
            <CheckLinks
              voices={props.shop.voices()}
              mechanic={mechanic()}
              second={second()}
              onLeave={() => props.shop.remember({ mechanic: mechanic().trim(), second: second().trim() })}
            />
            <label class="consent">
              <input
                type="checkbox"
                checked={isSoundAgreed()}
                onChange={(event) => setSoundAgreed(event.currentTarget.checked)}
              />
              <span>{startScreen.soundAgreed}</span>
            </label>
          </section>
          <PracticeOffer shop={props.shop} mechanic={mechanic()} />
          <section aria-labelledby="begin">
            <h2 id="begin">{startScreen.begin}</h2>
            <Show when={preparing()}>
              {(title) => (
                <p class="preparing">
                  <a class="button" href={addressOf({ kind: 'prepare' })}>
                    {startScreen.goOnPreparing(title())}
                  </a>
                </p>
              )}
            </Show>
            <ul class="cards">
              <For each={handedOver()}>
                {(written) => (
                  <li>
                    <button type="button" class="card" onClick={() => begin(written.text, written.file)}>
                      <ProcedureCard procedure={written.procedure} />
                    </button>
                  </li>
                )}
              </For>
              <For each={demos}>
                {(demo) => (
                  <li>
                    <DemoCard demo={demo} onBegin={(text) => begin(text, demo.file)} />
                  </li>
                )}
              </For>
            </ul>
            <FileButton label={startScreen.openProcedure} accept=".json" onFile={(file) => void beginFromFile(file)} />{' '}
            <a class="button" href={addressOf({ kind: 'editor' })}>
              {startScreen.writeProcedure}
            </a>
            <Show when={faults()}>{(found) => <FaultList file={found().file} faults={found().faults} />}</Show>
          </section>
          <KeptSessions shop={props.shop} />
          <section aria-labelledby="sealed">
            <h2 id="sealed">{startScreen.sealed}</h2>
            <p>{startScreen.sealedIsOnlyShown}</p>
            <FileButton label={startScreen.openSealed} accept=".bhsession" onFile={(file) => void openSealed(file)} />
          </section>
          <SpeechModel shop={props.shop} />
          <SoundChoices shop={props.shop} />
          <ThisProgram versions={props.shop.versions} />
        </main>
      }
    >
      {(found) => <SealedFileReplay name={found().name} file={found().file} onLeave={() => setSealed(null)} />}
    </Show>
  );
}

/** It has its place before its file has come: nothing below it moves. */
function DemoCard(props: { readonly demo: Demo; onBegin(text: string): void }): JSX.Element {
  return (
    <Show
      when={props.demo.come()}
      fallback={
        <button type="button" class="card" disabled={!props.demo.isLost()} onClick={() => void props.demo.fetch()}>
          <b>{props.demo.file}</b>
          <span>{props.demo.isLost() ? startScreen.demoLost : startScreen.demoComing}</span>
        </button>
      }
    >
      {(come) => (
        <button type="button" class="card" onClick={() => props.onBegin(come().text)}>
          <ProcedureCard procedure={come().procedure} />
        </button>
      )}
    </Show>
  );
}

function ProcedureCard(props: { readonly procedure: Procedure }): JSX.Element {
  return (
    <>
      <b>{props.procedure.title}</b>
      <span>{startScreen.source(props.procedure.source.document, props.procedure.source.revision)}</span>
      <span>{startScreen.steps(props.procedure.steps.length)}</span>
      <Show when={props.procedure.invented}>
        <span class="invented">{startScreen.invented}</span>
      </Show>
    </>
  );
}

function FaultList(props: { readonly file: string; readonly faults: readonly Fault[] }): JSX.Element {
  return (
    <div class="trouble" role="alert">
      <p>{startScreen.notUsable(props.file, props.faults.length)}</p>
      <ul>
        <For each={props.faults}>
          {(fault) => (
            <li>
              <code>{fault.path || startScreen.wholeFile}</code>: {fault.message}
            </li>
          )}
        </For>
      </ul>
    </div>
  );
}
