import { createMemo, createSignal, For, onMount, Show, untrack, type JSX } from 'solid-js';
import { loadProcedure, type Procedure } from '../../procedure/procedure.ts';
import { assess } from '../../session/preparation/assess.ts';
import type { Circumstances, Entered, MicrophoneCheck } from '../../session/preparation/entered.ts';
import type { Finding } from '../../session/preparation/finding.ts';
import { stepsThatMayApply } from '../../session/preparation/needed.ts';
import { peopleIn } from '../../session/preparation/people.ts';
import { prepare } from '../../session/preparation/prepare.ts';
import { withEntered, type PreparationDraft } from '../../storage/preparation-draft.ts';
import { voiceOf } from '../../storage/voices.ts';
import { preparePage } from '../../words/prepare-page.ts';
import type { Shop } from '../app.tsx';
import { isOld, verdictOf } from '../check-words.ts';
import { now, today } from '../clock.ts';
import { deviceThumbprint } from '../device-seal.ts';
import { messageOf } from '../message.ts';
import { startFor } from '../mute.ts';
import { CheckLinks } from '../parts/check-links.tsx';
import { WayBack } from '../parts/way-back.tsx';
import { addressOf, go } from '../router.ts';
import { startSession } from '../session-file.ts';
import { Findings, idOf, Section, SIGNS } from './field.tsx';
import { ContainerSection, HazardsSection, LiftSection } from './load-and-hazards.tsx';
import type { Sheet } from './sheet.ts';
import { AdaptersSection, ConsumablesSection, ToolsSection } from './things.tsx';
import { DataSection, PeopleSection, QuestionsSection } from './who-and-what.tsx';
import './prepare.css';

/** What is looked at before the first step, by touch: what stops the work is said with what to do. */
export function PrepareScreen(props: { readonly shop: Shop }): JSX.Element {
  const draft = untrack(() => props.shop.preparation());
  const loaded = draft && loadProcedure(draft.text);
  return (
    <Show
      when={loaded?.kind === 'loaded' && draft && { procedure: loaded.procedure, draft }}
      fallback={<WayBack>{preparePage.cannotBeRead}</WayBack>}
    >
      {(found) => <Page shop={props.shop} procedure={found().procedure} draft={found().draft} />}
    </Show>
  );
}

function Page(props: {
  readonly shop: Shop;
  readonly procedure: Procedure;
  readonly draft: PreparationDraft;
}): JSX.Element {
  // One page is for one procedure.
  const { shop, procedure } = untrack(() => props);
  const [draft, setDraft] = createSignal(untrack(() => props.draft));
  const entered = createMemo(() => draft().entered);
  const keep = (after: PreparationDraft): void => shop.setPreparation(setDraft(after));
  const seen = (): Circumstances => ({ day: today(), microphones: checksOf(shop, entered()) });
  const findings = createMemo(() => assess(procedure, entered(), seen()));
  // Rows are made from these: they stay as they are while something else is entered, and so does the focus in them.
  const conditions = createMemo(() => entered().conditions);
  const steps = createMemo(() => stepsThatMayApply(procedure, conditions()));
  const sheet: Sheet = {
    procedure,
    get entered() {
      return entered();
    },
    get steps() {
      return steps();
    },
    get findings() {
      return findings();
    },
    change: (part) => keep(withEntered(draft(), part)),
    get isSoundAgreed() {
      return draft().sound === 'agreed';
    },
    agreeToSound: (agreed) => keep({ ...draft(), sound: agreed ? 'agreed' : 'not agreed' }),
  };
  const [isRefused, setRefused] = createSignal(false);
  const [trouble, setTrouble] = createSignal<string | null>(null);
  let isStarting = false;
  let summary: HTMLHeadingElement | undefined;
  let main: HTMLElement | undefined;
  onMount(() => main?.focus());

  async function begin(): Promise<void> {
    const prepared = prepare(procedure, entered(), seen());
    setRefused(prepared.kind === 'not prepared');
    if (prepared.kind === 'not prepared') {
      summary?.focus();
      return;
    }
    // A second tap while the first is being written must not begin a second session.
    if (isStarting) return;
    isStarting = true;
    setTrouble(null);
    const people = peopleIn(entered());
    shop.remember({ mechanic: people.mechanic, second: people.second ?? '' });
    try {
      // Sound and microphone are asked for in this tap; the session does not wait for the answer.
      startFor(shop, people.mechanic, false);
      const model = shop.devices.model();
      const session = await startSession(shop.book, JSON.parse(draft().text), {
        people,
        sound: draft().sound,
        model: model && { name: model.name, sha256: model.sha256 },
        device: await deviceThumbprint(),
        prepared: prepared.events,
      });
      // Not before this page is left: without a preparation it shows none.
      window.addEventListener('hashchange', () => shop.setPreparation(null), { once: true });
      go({ kind: 'work', session });
    } catch (error) {
      isStarting = false;
      setTrouble(preparePage.notWritten(messageOf(error)));
    }
  }

  return (
    <main class="prepare" ref={main} tabindex="-1">
      <header>
        <h1>{preparePage.title(procedure.title)}</h1>
        <Show when={procedure.invented}>
          <p class="invented">{preparePage.invented}</p>
        </Show>
        <p>
          <a class="button" href={addressOf({ kind: 'start' })}>
            {preparePage.back}
          </a>
        </p>
      </header>
      <PeopleSection sheet={sheet} />
      <DataSection sheet={sheet} />
      <QuestionsSection sheet={sheet} />
      <ToolsSection sheet={sheet} />
      <AdaptersSection sheet={sheet} />
      <ConsumablesSection sheet={sheet} />
      <ContainerSection sheet={sheet} />
      <LiftSection sheet={sheet} />
      <HazardsSection sheet={sheet} />
      <Section name="microphone" title={preparePage.microphone}>
        <CheckLinks
          voices={shop.voices()}
          mechanic={entered().mechanic}
          second={entered().second}
          onLeave={() => undefined}
        />
        <For each={checksOf(shop, entered())}>
          {({ person }) => <Findings field={`microphone/${person}`} all={findings()} />}
        </For>
      </Section>
      <section class="ready" aria-labelledby="ready">
        <h2 id="ready" ref={summary} tabindex="-1">
          {preparePage.standing(countOf(findings(), true), countOf(findings(), false))}
        </h2>
        <p role="alert" class="refused">
          {isRefused() && findings().some(({ stops }) => stops) ? preparePage.cannotBegin : (trouble() ?? '')}
        </p>
        <ul>
          <For each={findings()}>{(finding) => <Line finding={finding} />}</For>
        </ul>
        <button type="button" class="primary begin" onClick={() => void begin()}>
          {beginWords(findings())}
        </button>
      </section>
    </main>
  );
}

/** The last check of everybody who is named, where it still says something about today. */
function checksOf(shop: Shop, entered: Entered): readonly MicrophoneCheck[] {
  const { mechanic, second } = peopleIn(entered);
  return [mechanic, second ?? ''].flatMap((person) => {
    const voice = person === '' ? null : voiceOf(shop.voices(), person);
    return voice && !isOld(voice, now().utc)
      ? [{ person, fitness: verdictOf(voice).fitness, at: voice.checkedAt }]
      : [];
  });
}

/** What leads to the field that a finding is about. An address would lead out of the page. */
function Line(props: { readonly finding: Finding }): JSX.Element {
  const lead = (): void => {
    const field = document.getElementById(idOf(props.finding.field));
    field?.scrollIntoView({ block: 'center' });
    field?.focus({ preventScroll: true });
  };
  return (
    <li>
      <button type="button" class={props.finding.stops ? 'stops' : 'warns'} onClick={lead}>
        <span aria-hidden="true">{props.finding.stops ? SIGNS.stops : SIGNS.warns}</span>{' '}
        <span class="said-only">{props.finding.stops ? preparePage.stops : preparePage.warns}</span>{' '}
        {props.finding.sentence}
      </button>
    </li>
  );
}

const countOf = (findings: readonly Finding[], stops: boolean): number =>
  findings.filter((each) => each.stops === stops).length;

function beginWords(findings: readonly Finding[]): string {
  const [stops, warnings] = [countOf(findings, true), countOf(findings, false)];
  return stops > 0 || warnings === 0 ? preparePage.begin : preparePage.beginInSpite(warnings);
}
