import { Show, createResource, type JSX } from 'solid-js';
import { openSavedMarks } from '../../storage/saved-marks.ts';

/** Says of a session what of it is on this device only; nothing where all of it was saved as a sealed file. */
export function UnsavedLine(props: { readonly session: string; readonly entries: number }): JSX.Element {
  const [saved] = createResource(
    () => props.session,
    (session) => openSavedMarks().saved(session),
  );
  return (
    <Show when={saved.state === 'ready' && props.entries - (saved() ?? 0)}>
      {(unsaved) => (
        <p class="unsaved">
          {unsaved() === props.entries
            ? 'On this device only: it was never saved as a sealed file.'
            : `Not all of it was saved: ${unsaved()} ${unsaved() === 1 ? 'entry is' : 'entries are'} newer than the sealed file.`}
        </p>
      )}
    </Show>
  );
}
