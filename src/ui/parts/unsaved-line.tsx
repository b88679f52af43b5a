import { Show, createResource, type JSX } from 'solid-js';
import { openSavedMarks } from '../../storage/saved-marks.ts';
import { unsavedText } from '../unsaved-text.ts';

/** Says of a session what of it is on this device only; nothing where all of it was saved as a sealed file. */
export function UnsavedLine(props: { readonly session: string; readonly entries: number }): JSX.Element {
  const [saved] = createResource(
    () => props.session,
    (session) => openSavedMarks().saved(session),
  );
  const text = (): string | null => {
    const mark = saved.state === 'ready' ? saved() : undefined;
    return mark ? unsavedText(props.entries, mark) : null;
  };
  return <Show when={text()}>{(unsaved) => <p class="unsaved">{unsaved()}</p>}</Show>;
}
