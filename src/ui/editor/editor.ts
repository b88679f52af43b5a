import { createContext, createMemo, createSignal, useContext, type Accessor } from 'solid-js';
import { type Draft, fileText, isFields, type Json, type Path, put, take } from '../../procedure/edit/draft.ts';
import { findingsOf, type Findings } from '../../procedure/edit/findings.ts';
import { startingDraft } from '../../procedure/edit/things.ts';
import type { DraftBook, KeptDraft } from '../../storage/draft-book.ts';
import { messageOf } from '../message.ts';
import { formWords, isMissing } from './form-words.ts';

/** Something to be said about a place in the draft. */
export interface Remark {
  readonly place: string;
  readonly words: string;
  /** Nothing was filled in yet; something is wrong; a careful reader would ask. */
  readonly kind: 'missing' | 'fault' | 'warning';
}

/** The procedure on the page: one draft, kept on this device with every change, and the way back from each. */
export interface Editor {
  readonly draft: Accessor<Draft>;
  readonly findings: Accessor<Findings>;
  readonly remarks: Accessor<readonly Remark[]>;
  /** What the browser says where it will not keep the draft; null as long as it does. */
  readonly trouble: Accessor<string | null>;
  readonly canUndo: Accessor<boolean>;
  /** What the last import left out, until the person says that it was looked up. */
  readonly leftOut: Accessor<LeftOutOf | null>;
  /** The person has looked up what was left out. */
  settleLeftOut(): void;
  /** Puts another procedure in place of the draft, with what its import left out. Both come back together with `undo`. */
  replace(draft: Draft, leftOut: LeftOutOf | null): void;
  /** Changes the draft. Changes of one field in a row, named alike, are taken back as one. */
  edit(change: (draft: Draft) => Draft, name?: string): void;
  /** Puts a value at a path; null takes the field away. */
  set(path: Path, value: Json): void;
  undo(): void;
}

export type LeftOutOf = NonNullable<KeptDraft['leftOut']>;

const MOST_UNDONE = 200;

/** What an undo goes back to; with what was left out, where the draft was replaced as a whole. */
interface Before {
  readonly draft: Draft;
  readonly leftOut?: LeftOutOf | null;
}

/** @param kept what was left here last; null where there is nothing or it cannot be read */
export function createEditor(book: DraftBook, kept: KeptDraft | null): Editor {
  const [draft, setDraft] = createSignal<Draft>(draftOf(kept) ?? startingDraft());
  const [leftOut, setLeftOut] = createSignal(kept?.leftOut ?? null);
  const [before, setBefore] = createSignal<readonly Before[]>([]);
  const [trouble, setTrouble] = createSignal<string | null>(null);
  let lastNamed: string | undefined;
  const findings = createMemo(() => findingsOf(draft()));
  const remarks = createMemo(() => remarksOf(findings()));

  async function keep(): Promise<void> {
    try {
      await book.keep({ text: fileText(draft()), leftOut: leftOut() });
      setTrouble(null);
    } catch (error) {
      setTrouble(messageOf(error));
    }
  }
  const remember = (now: Before): void => void setBefore((all) => [...all.slice(-MOST_UNDONE), now]);
  function edit(change: (draft: Draft) => Draft, name?: string): void {
    const now = draft();
    const next = change(now);
    // What changes no word of the file is no change to take back.
    if (next === now || fileText(next) === fileText(now)) return;
    if (name === undefined || name !== lastNamed) remember({ draft: now });
    lastNamed = name;
    setDraft(next);
    void keep();
  }
  return {
    draft,
    findings,
    remarks,
    trouble,
    canUndo: () => before().length > 0,
    leftOut,
    settleLeftOut() {
      setLeftOut(null);
      void keep();
    },
    replace(next, left) {
      remember({ draft: draft(), leftOut: leftOut() });
      lastNamed = undefined;
      setDraft(next);
      setLeftOut(left);
      void keep();
    },
    edit,
    set: (path, value) => edit((now) => (value === null ? take(now, path) : put(now, path, value)), path.join('.')),
    undo() {
      const last = before().at(-1);
      if (last === undefined) return;
      setBefore((all) => all.slice(0, -1));
      lastNamed = undefined;
      setDraft(last.draft);
      if (last.leftOut !== undefined) setLeftOut(last.leftOut);
      void keep();
    },
  };
}

function remarksOf({ faults, warnings }: Findings): readonly Remark[] {
  return [
    ...faults.map(({ path, message }) => ({
      place: path,
      words: formWords(message),
      kind: isMissing(message) ? ('missing' as const) : ('fault' as const),
    })),
    ...warnings.map(({ path, message }) => ({ place: path, words: formWords(message), kind: 'warning' as const })),
  ];
}

/** What was kept, as a draft again; null where it is none. */
function draftOf(kept: KeptDraft | null): Draft | null {
  try {
    const json = JSON.parse(kept?.text ?? 'null') as Json;
    return isFields(json) ? json : null;
  } catch {
    return null;
  }
}

export const EditorContext = createContext<Editor>();

/** The editor of the page around. */
export function useEditor(): Editor {
  const editor = useContext(EditorContext);
  if (editor === undefined) throw new Error('no editor around this part of the page');
  return editor;
}
