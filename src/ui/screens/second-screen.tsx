import {
  ErrorBoundary,
  Match,
  Show,
  Switch,
  createEffect,
  createMemo,
  createResource,
  createSignal,
  on,
  onCleanup,
  onMount,
  untrack,
  type JSX,
} from 'solid-js';
import type { SecondMeaning } from '../../record/input-schema.ts';
import { openRecordBook } from '../../storage/record-book.ts';
import { openedRecord } from '../../words/opened-record.ts';
import { secondScreen } from '../../words/second-screen.ts';
import { messageOf } from '../message.ts';
import { NumberEntry } from '../parts/number-entry.tsx';
import { JoinForm, SecondPerson } from '../parts/second-person.tsx';
import { SecondRecord } from '../parts/second-record.tsx';
import { Trouble } from '../parts/trouble.tsx';
import { WayBack } from '../parts/way-back.tsx';
import type { Answer } from '../second-channel.ts';
import { openSecondLink, type SecondLink } from '../second-link.ts';
import { secondView, type SecondView, type Task } from '../second-view.ts';
import '../second.css';
import { readSession, stateAfter, type KeptSession } from '../session-file.ts';

/**
 * The second person's own window: it reads the record and says what they mean; the window that holds the pen writes it.
 * It has no ear and no voice: they belong to the mechanic.
 */
export function SecondScreen(props: { readonly session: string }): JSX.Element {
  const session = untrack(() => props.session);
  const book = openRecordBook();
  const link = openSecondLink(session);
  // What is shown stays until what is newer is read.
  const [kept] = createResource(
    () => link.newest() ?? 0,
    () => readSession(book, session),
  );
  return (
    <ErrorBoundary fallback={(error: unknown) => <WayBack>{messageOf(error)}</WayBack>}>
      <Switch fallback={<p class="opening">{openedRecord.opening}</p>}>
        <Match when={kept.error as unknown}>{(error) => <WayBack>{messageOf(error())}</WayBack>}</Match>
        <Match when={kept.latest}>{(found) => <SecondBench link={link} kept={found()} />}</Match>
      </Switch>
    </ErrorBoundary>
  );
}

/** What became of what was said here last. */
type Became = Answer | 'on its way' | 'no answer';
interface Answered {
  readonly became: Became;
  /** The newest entry when it was answered; null as long as it is not. */
  readonly at: number | null;
}

function SecondBench(props: { readonly link: SecondLink; readonly kept: KeptSession }): JSX.Element {
  const [answer, setAnswer] = createSignal<Answered | null>(null);
  const view = createMemo(() => secondView(stateAfter(props.kept, props.kept.entries.length), props.kept.entries));
  const isHeard = (): boolean => props.link.worker() === 'there';
  const task = (): Task => view().task;

  /** @returns whether it was taken */
  async function send(meaning: SecondMeaning): Promise<boolean> {
    setAnswer({ became: 'on its way', at: null });
    const became = await props.link.send(meaning, props.kept.entries.length - 1);
    setAnswer({ became: became ?? 'no answer', at: props.link.newest() });
    return became?.taken ?? false;
  }
  /** An answer stands until the work goes on. */
  const standing = (): Became | null => {
    const last = answer();
    return last && (last.at === null || last.at === props.link.newest()) ? last.became : null;
  };
  async function read(value: string): Promise<boolean> {
    const wanted = task();
    return wanted.kind === 'read' && send({ kind: 'witness', reading: { fastener: wanted.fastener, value } });
  }
  /** An inspection is under the name of who joined here. */
  const wordOf = (agrees: boolean): SecondMeaning => {
    const wanted = task();
    return wanted.kind === 'look' && wanted.isInspection
      ? { kind: 'inspects', name: view().second ?? '', agrees }
      : { kind: 'witness says', agrees };
  };
  const wantedOf = (): number | null => {
    const wanted = task();
    return wanted.kind === 'read' && isHeard() ? wanted.of : null;
  };
  const unit = (): string => {
    const wanted = task();
    return wanted.kind === 'read' ? wanted.unit : '';
  };

  let told: HTMLDivElement | undefined;
  // What is wanted next must not be out of sight because somebody scrolled to the readings.
  createEffect(on([() => JSON.stringify(task()), standing], () => told?.scrollTo(0, 0)));
  const title = document.title;
  onMount(() => (document.title = secondScreen.windowTitle));
  onCleanup(() => (document.title = title));

  return (
    <main class="second">
      <SecondPerson
        name={view().second}
        isHeard={isHeard()}
        onLeave={() => void send({ kind: 'second person', name: null })}
      />
      <div class="told" ref={told}>
        <Hindrances link={props.link} kept={props.kept} />
        <Show when={view().second === null && view().step !== null}>
          <JoinForm
            mechanic={view().mechanic}
            isHeard={isHeard()}
            onJoin={(name) => void send({ kind: 'second person', name })}
          />
        </Show>
        <Wanted view={view()} />
        <AnswerLine became={standing()} />
        <SecondRecord view={view()} />
      </div>
      <div class="pad">
        <NumberEntry of={wantedOf()} unit={unit()} onRead={read} />
        <StepWords isWanted={task().kind === 'look' && isHeard()} onSay={(agrees) => void send(wordOf(agrees))} />
      </div>
    </main>
  );
}

/** What keeps this window from being of use, and what to do about it. */
function Hindrances(props: { readonly link: SecondLink; readonly kept: KeptSession }): JSX.Element {
  const broken = (): string | false => {
    const { verification } = props.kept;
    return verification.kind === 'broken' && openedRecord.broken(verification.at, verification.why);
  };
  const dropped = (): string | null => {
    const why = props.link.dropped();
    return why && secondScreen.loadAgain(why);
  };
  return (
    <>
      <Trouble text={broken()} />
      <Trouble text={props.link.worker() === 'gone' && secondScreen.nobodyWorks} />
      <Trouble text={dropped()} />
    </>
  );
}

/** The step, the fastener and the pass; then what is wanted, large. */
function Wanted(props: { readonly view: SecondView }): JSX.Element {
  return (
    <section class="second-wanted" aria-live="polite" aria-label={secondScreen.wantedOfYou}>
      <Show when={props.view.step}>
        {(step) => <p class="step-line">{secondScreen.step(step().number, step().count, step().title)}</p>}
      </Show>
      <Show when={props.view.at}>
        {(at) => (
          <p class="at">
            <b>{secondScreen.fastener(at().label, at().fastener)}</b> {at().round}
          </p>
        )}
      </Show>
      <Show when={props.view.finding}>
        {(finding) => (
          <div class={`finding ${finding().kind}`}>
            <p class="headline">{finding().headline}</p>
            <p>{finding().detail}</p>
          </div>
        )}
      </Show>
      <TaskText task={props.view.task} />
    </section>
  );
}

function TaskText(props: { readonly task: Task }): JSX.Element {
  return (
    <Switch>
      <Match when={props.task.kind === 'help' && props.task}>
        {(help) => (
          <p class="help-called" role="alert">
            {help().what}
          </p>
        )}
      </Match>
      <Match when={props.task.kind === 'read'}>
        <p class="task wanted">{secondScreen.read}</p>
      </Match>
      <Match when={props.task.kind === 'look' && props.task}>
        {(look) => (
          <>
            <p class="task wanted">{secondScreen.look(look().what)}</p>
            <p class="note">{look().text}</p>
          </>
        )}
      </Match>
      <Match when={props.task.kind === 'wait' && props.task}>{(wait) => <p class="task">{wait().why}</p>}</Match>
    </Switch>
  );
}

/** Neither is made to look like the wanted one: what they say is what they see. */
function StepWords(props: { readonly isWanted: boolean; readonly onSay: (agrees: boolean) => void }): JSX.Element {
  const say = (agrees: boolean): void => {
    if (props.isWanted) props.onSay(agrees);
  };
  return (
    <div class="step-words" classList={{ wanted: props.isWanted }}>
      <button type="button" aria-disabled={!props.isWanted} onClick={() => say(true)}>
        {secondScreen.affirm}
      </button>
      <button type="button" aria-disabled={!props.isWanted} onClick={() => say(false)}>
        {secondScreen.negative}
      </button>
    </div>
  );
}

/** What became of the last thing that was said from here, in the words that were spoken. */
function AnswerLine(props: { readonly became: Became | null }): JSX.Element {
  const taken = () => (typeof props.became === 'object' ? (props.became?.taken ?? null) : null);
  const text = (): string => {
    if (props.became === null) return '';
    if (props.became === 'on its way') return secondScreen.onItsWay;
    if (props.became === 'no answer') return secondScreen.noAnswer;
    const { taken, sentence } = props.became;
    return taken ? secondScreen.taken(sentence) : secondScreen.notTaken(sentence);
  };
  return (
    <p
      class="answer"
      classList={{ taken: taken() === true, refused: taken() === false || props.became === 'no answer' }}
      role="status"
    >
      {text()}
    </p>
  );
}
