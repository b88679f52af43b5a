import { readFileSync } from 'node:fs';
import { demoEntries } from '../../../src/cli/demo-session.ts';
import { openSessionFile } from '../../../src/record/sealed-file.ts';
import { recordIn } from '../../record/sealed.ts';

const entries = await demoEntries();
/** The demonstration session, as it is played. */
export const demo = await recordIn(entries, entries[0]?.session);

const file = new Uint8Array(readFileSync(new URL('../../record/fixtures/format-2.bhsession', import.meta.url)));
const opened = await openSessionFile(file, { now: '2026-04-01T00:00:00.000Z' });
if (opened.kind === 'refused' || opened.session.kind === 'unreadable') throw new Error('It was not opened.');
/** One of before, as it was sealed: what is looked for in it stays at its place when the job is changed. 108 entries. */
export const sealedDemo = opened.session.record;
