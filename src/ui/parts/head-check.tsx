import { For, Show, createMemo, createSignal, type JSX } from 'solid-js';
import { compareHead, headGroups, type HeadFinding } from '../../record/head.ts';
import type { SessionRecord } from '../../record/session-record.ts';
import { integrity } from '../../words/integrity.ts';

/** The head of a record, whole, to be noted elsewhere; and a field to compare one that was noted earlier with it. */
export function HeadCheck(props: { readonly record: SessionRecord }): JSX.Element {
  const [noted, setNoted] = createSignal('');
  const isIntact = () => props.record.verification.kind === 'intact';
  const finding = createMemo(() => (noted().trim() === '' ? null : compareHead(noted(), props.record.entries)));
  return (
    <section class="head-check" aria-label={integrity.headOfRecord}>
      <p>
        {isIntact() ? integrity.head : integrity.headBeforeBreak}{' '}
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
        <p class="note">{integrity.noteIt}</p>
      </Show>
      <label>
        {integrity.compare}
        <input
          autocomplete="off"
          spellcheck={false}
          value={noted()}
          onInput={(event) => setNoted(event.currentTarget.value)}
        />
      </label>
      <p role="status" class={`finding ${finding()?.kind.replaceAll(' ', '-') ?? ''}`}>
        <Show when={finding()}>{(found) => <>{findingText(found())}</>}</Show>
      </p>
    </section>
  );
}

function findingText(finding: HeadFinding): string {
  switch (finding.kind) {
    case 'same':
      return integrity.same;
    case 'grown':
      return integrity.grown(finding.at, finding.since);
    case 'another':
      return integrity.another;
    case 'no head':
      return finding.why;
  }
}
