/** What the tables of a replay and of a record sheet are made of. */
import { For, Show, type JSX } from 'solid-js';

/** The words over the columns. */
export const Heads = (props: { readonly words: readonly string[] }): JSX.Element => (
  <thead>
    <tr>
      <For each={props.words}>{(words) => <th scope="col">{words}</th>}</For>
    </tr>
  </thead>
);

/** A table with its rows. */
export const Table = (props: {
  readonly class?: string;
  readonly heads: readonly string[];
  readonly children: JSX.Element;
}): JSX.Element => (
  <table class={props.class}>
    <Heads words={props.heads} />
    <tbody>{props.children}</tbody>
  </table>
);

/** A row of cells; the time, which is not broken, is the last. */
export const Row = (props: { readonly cells: readonly JSX.Element[]; readonly at?: string }): JSX.Element => (
  <tr>
    <For each={props.cells}>{(cell) => <td>{cell}</td>}</For>
    <Show when={props.at !== undefined}>
      <td class="whole">{props.at}</td>
    </Show>
  </tr>
);
