import { For, Index, Match, Show, Switch, createSignal, onMount, type JSX } from 'solid-js';
import { render } from 'solid-js/web';

/** What the screens use of TSX, in small; each entry of `steps` changes something. */
export const steps: (() => void)[] = [];
const log: string[] = [];
const [count, setCount] = createSignal(0);
const [name, setName] = createSignal<string | null>(null);
const [list, setList] = createSignal(['a', 'b', 'c']);
const words = {
  get title() {
    return 'Title & <more>';
  },
};

function Child(props: { readonly label: string; readonly children?: JSX.Element }): JSX.Element {
  return (
    <>
      <b>{props.label}</b>
      {props.children}
    </>
  );
}

function Counted(props: { readonly value: number }): JSX.Element {
  let made: HTMLParagraphElement | undefined;
  onMount(() => log.push(`mounted ${made?.tagName ?? 'nothing'}`));
  return (
    <p ref={made} class="count" classList={{ many: props.value > 1, one: props.value === 1 }} data-of={props.value}>
      {props.value} of {words.title}, <i>now</i> {name() ?? 'nobody'}
    </p>
  );
}

function App(): JSX.Element {
  return (
    <main tabindex="-1" class="app" aria-label={words.title}>
      {words.title}
      {'   '}
      text &amp; more
      <br />
      <Counted value={count()} />
      {count() > 1 && <p id="many">many</p>}
      {count() > 1 ? <em>yes</em> : <strong>{name()}</strong>}
      {name() && count() > 0 ? 'both' : 'not both'}
      <Show when={name()} fallback={<p>no name</p>}>
        {(each) => <p title={each()}>{each()}</p>}
      </Show>
      <Show when={count() > 0}>
        <span>one</span>
        <span>{count()}</span>
      </Show>
      <ul>
        <For each={list()}>{(each, i) => <li value={i() + 1}>{each}</li>}</For>
        <li>last</li>
      </ul>
      <ol>
        <Index each={list()}>{(each) => <li>{each()}</li>}</Index>
      </ol>
      <Switch fallback="none">
        <Match when={count() === 1}>one</Match>
        <Match when={count() === 2}>
          <Child label="two">
            <u>inside</u>
          </Child>
        </Match>
      </Switch>
      <select value={count()} onChange={() => log.push('change')}>
        <For each={[0, 1, 2, 3]}>{(each) => <option value={each}>{each}</option>}</For>
      </select>
      <input type="range" value={count() * 10} min="0" max={20 + count()} disabled={count() === 3} />
      <label>
        <input type="checkbox" checked={count() > 0} /> {words.title}
      </label>
      <button
        type="button"
        hidden={count() === 2}
        onClick={() => log.push(`click ${count()}`)}
        onBlur={() => undefined}
      >
        {count()}
      </button>
      <svg viewBox="0 0 9 9" role="img">
        <title>{words.title}</title>
        <For each={list()}>{(each, i) => <circle class={`c${each}`} cx={i()} r={count()} />}</For>
        <path d={`M0 0L${count()} 9`} stroke-width="2" />
      </svg>
    </main>
  );
}

render(() => <App />, document.body);
const click = () => document.querySelector('button')?.click();
steps.push(
  click,
  () => setCount(1),
  () => setName('Ann'),
  click,
  () => setList(['c', 'a', 'd']),
  () => setCount(2),
  () => setName('Bo'),
  () => setList([]),
  () => setName(null),
  () => setCount(3),
  () => setList(['z', 'b']),
  () => setCount(0),
);

const fields = (): string =>
  [...document.querySelectorAll<HTMLInputElement>('input, select')]
    .map(({ value, checked, disabled }) => [value, checked, disabled].join(' '))
    .join('; ');
/** The same elements as long as nothing makes them anew. */
const seen = new Map<Element, number>();
const marks = (): string =>
  [...document.querySelectorAll('*')]
    .map((each) => seen.get(each) ?? (seen.set(each, seen.size), seen.size - 1))
    .join(' ');
const story: string[] = [];
// When all of the file was run: events are listened for at its end.
queueMicrotask(() => {
  for (const step of [() => undefined, ...steps]) {
    step();
    // Solid puts empty comments where texts would run together.
    story.push(document.body.innerHTML.replaceAll('<!---->', ''), fields(), marks(), log.join());
  }
  document.documentElement.dataset['story'] = JSON.stringify(story);
});
