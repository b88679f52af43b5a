import { For, Show, createMemo, createSignal, type JSX } from 'solid-js';
import { compareHead, headGroups, type HeadFinding } from '../../record/head.ts';
import type { SessionRecord } from '../../record/session-record.ts';

/** The head of a record, whole, to be noted elsewhere; and a field to compare one that was noted earlier with it. */
export function HeadCheck(props: { readonly record: SessionRecord }): JSX.Element {
  const [noted, setNoted] = createSignal('');
  const isIntact = () => props.record.verification.kind === 'intact';
  const finding = createMemo(() => (noted().trim() === '' ? null : compareHead(noted(), props.record.entries)));
  return (
    <section class="head-check" aria-label="Head of the record">
      <p>
        {isIntact() ? 'Head' : 'Head of the part before the break'}:{' '}
        <code class="head">
          <For each={headGroups(props.record.entries.at(-1)?.hash ?? '')}>
            {(group) => (
              <>
                <span>{group}</span>{' '}
              </>
            )}
          </For>
        </code>
      </p>
      <Show when={isIntact()}>
        <p class="note">Note it elsewhere. Compared later, it shows that nothing was cut off or written anew since.</p>
      </Show>
      <label>
        Compare with a head noted earlier
        <input
          autocomplete="off"
          spellcheck={false}
          value={noted()}
          onInput={(event) => setNoted(event.currentTarget.value)}
        />
      </label>
      <p role="status" class={`finding ${finding()?.kind.replaceAll(' ', '-') ?? ''}`}>
        <Show when={finding()}>{(found) => findingText(found())}</Show>
      </p>
    </section>
  );
}

function findingText(finding: HeadFinding): string {
  switch (finding.kind) {
    case 'same':
      return 'Same: this is the record that was noted, to its last entry.';
    case 'grown':
      return `Same up to entry ${finding.at}: entries were only added since, ${finding.since} of them.`;
    case 'another':
      return 'Another record: no entry here has this head. It is of another session, or this one was cut off or written anew since.';
    case 'no head':
      return finding.why;
  }
}
