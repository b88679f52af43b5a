import { ErrorBoundary, Match, Show, Switch, createResource, createSignal, onMount, type JSX } from 'solid-js';
import type { FileVerdict, SessionFile } from '../../record/sealed-file.ts';
import type { Sounds } from '../../record/sounds.ts';
import { openedRecord } from '../../words/opened-record.ts';
import { sealedFile } from '../../words/sealed-file.ts';
import { ways } from '../../words/ways.ts';
import type { Shop } from '../app.tsx';
import { findDeviceSeal, type ClosingSeal } from '../device-seal.ts';
import { messageOf } from '../message.ts';
import { VerificationLine } from '../parts/verification-line.tsx';
import { WayBack } from '../parts/way-back.tsx';
import { Replay } from '../replay/replay.tsx';
import { addressOf } from '../router.ts';
import { ClosingSealMissing, save, sealedFileOf } from '../saved-files.ts';
import { readSession, soundsOf, type KeptSession } from '../session-file.ts';

/** A session played back: the screen as it was after any entry, by the same fold that ran live. */
export function ReplayScreen(props: { readonly shop: Shop; readonly session: string }): JSX.Element {
  const [kept] = createResource(() => readSession(props.shop.book, props.session));
  // A browser that keeps no sounds or seals shows the record all the same.
  const found = (): KeptSession | undefined => (kept.error === undefined ? kept() : undefined);
  const [sounds] = createResource(found, (record) => soundsOf(record).catch(() => null));
  const [seal] = createResource(found, (record) => findDeviceSeal(record).catch(() => null));
  return (
    <ErrorBoundary fallback={(error: unknown) => <WayBack>{openedRecord.notPlayedBack(messageOf(error))}</WayBack>}>
      <Switch fallback={<p class="opening">{openedRecord.verifying}</p>}>
        <Match when={kept.error as unknown}>{(error) => <WayBack>{messageOf(error())}</WayBack>}</Match>
        <Match when={kept()}>
          {(found) => (
            <Replay
              kept={found()}
              verdict={<VerificationLine verification={found().verification} found={found().found} />}
              saving={<SaveSealed kept={found()} />}
              wayBack={<a href={addressOf({ kind: 'start' })}>{ways.allSessions}</a>}
              thumbprint={signedBy(seal())}
              sounds={sounds()?.sounds ?? NO_SOUNDS}
            />
          )}
        </Match>
      </Switch>
    </ErrorBoundary>
  );
}

/**
 * A sealed file played back. Whether it is as it was sealed is said first. Nothing of it is written to this device: it is
 * no session of this record book, and cannot be gone on with.
 */
export function SealedFileReplay(props: {
  readonly name: string;
  readonly file: SessionFile;
  readonly onLeave: () => void;
}): JSX.Element {
  // The verdict comes first, and stands at the top.
  onMount(() => window.scrollTo(0, 0));
  const wayBack = (
    <button type="button" onClick={() => props.onLeave()}>
      {sealedFile.close}
    </button>
  );
  const kept = () =>
    props.file.kind === 'opened' && props.file.session.kind === 'readable' ? props.file.session.record : null;
  return (
    <Show
      when={kept()}
      fallback={
        <main class="opening">
          <SealedVerdict name={props.name} file={props.file} />
          <p>{wayBack}</p>
        </main>
      }
    >
      {(record) => (
        <Replay
          kept={record()}
          verdict={<SealedVerdict name={props.name} file={props.file} />}
          wayBack={wayBack}
          thumbprint={sealedBy(props.file)}
          sounds={soundsIn(props.file)}
        />
      )}
    </Show>
  );
}

const NO_SOUNDS: Sounds = new Map();
const soundsIn = (file: SessionFile): Sounds => (file.kind === 'opened' ? file.sounds.sounds : NO_SOUNDS);

type SessionSeal = Extract<SessionFile, { kind: 'opened' }>['seal'];

/** The key of a good seal; null where there is none, or it does not fit. */
const signedBy = (seal: SessionSeal | ClosingSeal | null | undefined): string | null =>
  seal?.kind === 'good' ? seal.thumbprint : null;
const sealedBy = (file: SessionFile): string | null => (file.kind === 'opened' ? signedBy(file.seal) : null);

function SealedVerdict(props: { readonly name: string; readonly file: SessionFile }): JSX.Element {
  const isIntact = () => props.file.kind === 'opened' && props.file.verdict.kind === 'intact';
  return (
    <p class={`verification ${isIntact() ? 'intact' : 'broken'}`} role={isIntact() ? 'status' : 'alert'}>
      {sealedFile.verdict(
        props.name,
        props.file.kind === 'refused' ? sealedFile.notReadable(props.file.why) : verdictText(props.file.verdict),
      )}
    </p>
  );
}

function verdictText(verdict: FileVerdict): string {
  if (verdict.kind === 'not intact') {
    const { at, why } = verdict;
    return at === null ? sealedFile.notIntact(why) : sealedFile.notIntactAt(at, why);
  }
  return sealedFile.intact(verdict.entries, verdict.thumbprint);
}

/** The record as a file to be kept elsewhere, sealed by the key of this device. */
function SaveSealed(props: { readonly kept: KeptSession }): JSX.Element {
  const [said, setSaid] = createSignal('');
  const [lacksSeal, setLacksSeal] = createSignal(false);
  async function saveSealed(acceptsMissingSeal: boolean): Promise<void> {
    try {
      const { thumbprint, lacksSounds, ...file } = await sealedFileOf(props.kept, { acceptsMissingSeal });
      save(file);
      setSaid(sealedFile.saved(file.name, thumbprint, lacksSounds));
    } catch (error) {
      setLacksSeal(error instanceof ClosingSealMissing);
      setSaid(sealedFile.notMade(messageOf(error)));
    }
  }
  return (
    <Show when={props.kept.verification.kind === 'intact'}>
      <button type="button" onClick={() => void saveSealed(false)}>
        {sealedFile.save}
      </button>
      <Show when={lacksSeal()}>
        <button type="button" onClick={() => void saveSealed(true)}>
          {sealedFile.saveWithoutSeal}
        </button>
      </Show>
      <p role="status">{said()}</p>
    </Show>
  );
}
