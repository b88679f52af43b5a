import { createRoot } from 'solid-js';
import { describe, expect, it } from 'vitest';
import { wordsAt } from '../../src/procedure/edit/draft.ts';
import type { KeptDraft } from '../../src/storage/draft-book.ts';
import { createEditor } from '../../src/ui/editor/editor.ts';

function editor() {
  const kept: KeptDraft[] = [];
  const book = {
    keep: (draft: KeptDraft) => Promise.resolve(void kept.push(draft)),
    read: () => Promise.resolve(null),
  };
  return { kept, editor: createRoot(() => createEditor(book, null)) };
}
const LEFT_OUT = { file: 'module.xml', items: [{ place: 'line 4', what: 'the figure is not taken over' }] };

describe('what an import left out', () => {
  it('comes back with its procedure, where another one was opened in its place', () => {
    const { editor: page, kept } = editor();
    page.replace({ title: 'Imported' }, LEFT_OUT);
    page.replace({ title: 'Another' }, null);
    page.undo();
    expect(wordsAt(page.draft(), ['title'])).toBe('Imported');
    expect(page.leftOut()).toEqual(LEFT_OUT);
    expect(kept.at(-1)?.leftOut).toEqual(LEFT_OUT);
  });

  it('goes with its procedure, where the import is taken back', () => {
    const { editor: page } = editor();
    page.replace({ title: 'Imported' }, LEFT_OUT);
    page.undo();
    expect(page.leftOut()).toBeNull();
  });

  it('stays settled, whatever else is taken back', () => {
    const { editor: page } = editor();
    page.replace({ title: 'Imported' }, LEFT_OUT);
    page.set(['title'], 'Changed');
    page.settleLeftOut();
    page.undo();
    expect(wordsAt(page.draft(), ['title'])).toBe('Imported');
    expect(page.leftOut()).toBeNull();
  });
});
