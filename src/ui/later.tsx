import { Match, Switch, createResource, type Component, type JSX } from 'solid-js';
import { program } from '../words/program.ts';
import { messageOf } from './message.ts';

/**
 * A part of the screen whose code comes after the first paint. Without a Suspense around it: that would take a whole screen
 * away whenever one of its resources is read anew.
 */
export function later<Props extends object>(load: () => Promise<Component<Props>>): Component<Props> {
  return function Part(props: Props): JSX.Element {
    const [part] = createResource(load);
    return (
      <Switch fallback={<p class="opening">{program.opening}</p>}>
        <Match when={part.error as unknown}>
          {(error) => (
            <div class="opening" role="alert">
              <p>{program.partNotFetched(messageOf(error()))}</p>
              <p>
                <button type="button" onClick={() => location.reload()}>
                  {program.loadAgain}
                </button>
              </p>
            </div>
          )}
        </Match>
        <Match when={part()}>{(Ready) => <>{Ready()(props)}</>}</Match>
      </Switch>
    );
  };
}
