import { createMemo, createResource, Match, onCleanup, Switch, type JSX } from 'solid-js';
import type { SessionRecord } from '../../record/session-record.ts';
import type { Sounds } from '../../record/sounds.ts';
import type { SoundOfReading } from '../../session/intent.ts';
import { replay } from '../../words/replay.ts';
import { Trouble } from '../parts/trouble.tsx';
import { soundBy } from './evidence.ts';

/** The sound around what was heard: checked against its hash before it can be played. */
export function EvidenceSound(props: {
  readonly record: SessionRecord;
  readonly heard: SoundOfReading;
  readonly sounds: Sounds;
}): JSX.Element {
  const hash = () => (props.heard.kept ? props.heard.sha256 : null);
  const why = () => (props.heard.kept ? null : props.heard.why);
  const [found] = createResource(
    () => ({ hash: hash(), sounds: props.sounds, entries: props.record.entries }),
    async ({ hash, sounds, entries }) => (hash === null ? null : soundBy(hash, sounds, entries)),
  );
  const good = () => {
    const sound = found();
    return sound?.kind === 'good' ? sound.bytes : null;
  };
  return (
    <div class="evidence">
      <Switch>
        <Match when={why()}>{(reason) => <p>{replay.sound.notKept(reason())}</p>}</Match>
        <Match when={good()} keyed>
          {(bytes) => <Player bytes={bytes} />}
        </Match>
        <Match when={found()?.kind === 'deleted'}>
          <p>{replay.sound.deleted}</p>
        </Match>
        <Match when={found()?.kind === 'absent'}>
          <p>{replay.sound.absent}</p>
        </Match>
        <Match when={found()?.kind === 'changed'}>
          <Trouble text={replay.sound.changed} />
        </Match>
      </Switch>
    </div>
  );
}

function Player(props: { readonly bytes: Uint8Array<ArrayBuffer> }): JSX.Element {
  const address = createMemo(() => {
    const made = URL.createObjectURL(new Blob([props.bytes], { type: 'audio/wav' }));
    onCleanup(() => URL.revokeObjectURL(made));
    return made;
  });
  return (
    <label class="sound">
      {replay.sound.checked}
      <audio controls preload="metadata" src={address()} />
    </label>
  );
}
