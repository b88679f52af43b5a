import { Show, createResource, createSignal, untrack, type JSX } from 'solid-js';
import { openSoundStore } from '../../storage/sound-store.ts';
import type { SessionRecord } from '../../record/session-record.ts';
import { keptSounds } from '../../words/kept-sounds.ts';
import type { Shop } from '../app.tsx';
import { deleteSounds, removeStrays, soundsLeft } from '../delete-sounds.ts';
import { messageOf } from '../message.ts';

/** The sounds of a kept session: how many there are, and the way to delete them for good. */
export function KeptSounds(props: {
  readonly shop: Shop;
  readonly record: SessionRecord;
  readonly onDeleted: () => void;
}): JSX.Element {
  const store = openSoundStore();
  const [found, { refetch }] = createResource(async () => {
    await removeStrays(props.record.id, { book: props.shop.book, sounds: store });
    return soundsLeft(props.record, await store.hashes(props.record.id)).length;
  });
  const [isAsked, setAsked] = createSignal(false);
  const [name, setName] = createSignal(untrack(() => props.shop.settings.mechanic));
  const [trouble, setTrouble] = createSignal('');

  async function remove(): Promise<void> {
    if (name().trim() === '') {
      setTrouble(keptSounds.typeWhoDeletes);
      return;
    }
    try {
      await deleteSounds(props.record.id, name().trim(), { book: props.shop.book, sounds: store });
      setAsked(false);
      setTrouble('');
      await refetch();
      props.onDeleted();
    } catch (error) {
      setTrouble(keptSounds.notDeleted(messageOf(error)));
    }
  }

  return (
    <Show when={found.state === 'ready' && (found() ?? 0) > 0}>
      <div class="kept-sounds">
        <p>{keptSounds.keptWithIt(found() ?? 0)}</p>
        <Show
          when={isAsked()}
          fallback={
            <button type="button" onClick={() => setAsked(true)}>
              {keptSounds.delete}
            </button>
          }
        >
          <form
            onSubmit={(event) => {
              event.preventDefault();
              void remove();
            }}
          >
            <label>
              {keptSounds.whoDeletes}
              <input value={name()} onInput={(event) => setName(event.currentTarget.value)} />
            </label>
            <p>{keptSounds.deleteFilesAsWell}</p>
            <button type="submit">{keptSounds.deleteForGood}</button>
            <button type="button" onClick={() => setAsked(false)}>
              {keptSounds.keep}
            </button>
          </form>
        </Show>
        <p role="status">{trouble()}</p>
      </div>
    </Show>
  );
}
