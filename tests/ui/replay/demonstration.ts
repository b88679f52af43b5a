import { readFileSync } from 'node:fs';
import { openSessionFile } from '../../../src/record/sealed-file.ts';

/** A demonstration of before, kept as it was sealed: what is looked for in it stays at its place when the job is changed. */
const file = new Uint8Array(readFileSync(new URL('../../record/fixtures/format-2.bhsession', import.meta.url)));
const opened = await openSessionFile(file, { now: '2026-04-01T00:00:00.000Z' });
if (opened.kind === 'refused' || opened.session.kind === 'unreadable')
  throw new Error('The demonstration was not opened.');
/** 108 entries. */
export const demo = opened.session.record;
