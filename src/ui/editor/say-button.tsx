import { createContext, useContext, type JSX } from 'solid-js';

/** Speaks texts, one after another. */
export type Say = (texts: readonly string[]) => void;

export const SayContext = createContext<Say>(() => undefined);

/** Speaks what stands beside it. */
export function SayButton(props: {
  readonly label: string;
  readonly texts: () => readonly string[];
  readonly children: JSX.Element;
}): JSX.Element {
  const say = useContext(SayContext);
  return (
    <button type="button" aria-label={props.label} onClick={() => say(props.texts())}>
      {props.children}
    </button>
  );
}
