import { For, type JSX } from 'solid-js';
import { wanted } from '../../words/wanted.ts';
import { createFit } from './fit.ts';
import { size } from './words.tsx';

/** The answer to what was asked. It is spoken as well, so a screen reader is not told of it. */
export function Answer(props: { readonly sentences: readonly string[]; readonly onPutAway: () => void }): JSX.Element {
  let box: HTMLButtonElement | undefined;
  createFit(
    () => box,
    () => box,
    () => props.sentences,
  );
  return (
    <button type="button" class="answer" ref={box} onClick={() => props.onPutAway()}>
      <For each={props.sentences}>
        {(text) => <span class={`sentence ${size(props.sentences.join(' '))}`}>{text}</span>}
      </For>
      <span class="note put-away">{wanted.putAway}</span>
    </button>
  );
}
