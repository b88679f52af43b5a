/** Sessions as files: sealed, to be kept elsewhere; as a table; and opened again without being taken in. */
import { LARGEST_FILE } from '../record/container.ts';
import { readingsCsv } from '../record/readings-csv.ts';
import { valuesCsv } from '../record/values-csv.ts';
import { sealRecord } from '../record/seal.ts';
import { EXTENSION, openSessionFile, packSession, type SessionFile } from '../record/sealed-file.ts';
import type { SessionRecord } from '../record/session-record.ts';
import { openSavedMarks } from '../storage/saved-marks.ts';
import { signingKey } from '../storage/signing-key.ts';
import { integrity } from '../words/integrity.ts';
import { now } from './clock.ts';
import { findDeviceSeal, type ClosingSeal } from './device-seal.ts';
import { messageOf } from './message.ts';
import { appName, soundsOf } from './session-file.ts';

/** What is saved to a disk, under a name. */
export interface FileToSave {
  readonly name: string;
  readonly content: Blob;
  /** Called when the browser has begun to save it. */
  readonly onSaved?: () => void;
}

/** A sealed file, with the thumbprint of the key that sealed it. */
export interface SealedFile extends FileToSave {
  readonly thumbprint: string;
  /** Its sounds would make it larger than any sealed file may be: they stay on the device. */
  readonly lacksSounds: boolean;
}

/** The seal of a closed record is not on this device any more: what is sealed now may not be what was closed. */
export class ClosingSealMissing extends Error {
  override readonly name = 'ClosingSealMissing';
}

export interface SealingOptions {
  /** Bytes that the file may have: with more, the record leaves the device without its sounds rather than not at all. */
  readonly most?: number;
  /** A person has read that the seal of the closing is missing, and wants the file all the same. */
  readonly acceptsMissingSeal?: boolean;
}

/** A session id as a file name that every system takes. */
const fileName = (id: string, extension: string): string => `${id.replace(/[^\w.-]/g, '_')}${extension}`;

/**
 * A session as a sealed file with its sounds, by the key of this device. It is read back and checked before it is given
 * out.
 * @throws where the record is broken or is not as it was sealed when it was closed, or this browser keeps no key
 * @throws ClosingSealMissing where it is closed, its seal is missing, and that was not accepted
 */
export async function sealedFileOf(
  record: SessionRecord,
  { most = LARGEST_FILE, acceptsMissingSeal = false }: SealingOptions = {},
): Promise<SealedFile> {
  // A new seal must hide neither that the first one does not fit any more, nor that it is gone.
  const ofClosing = await findDeviceSeal(record).catch((): ClosingSeal => ({ kind: 'missing' }));
  if (ofClosing.kind === 'bad') throw new Error(integrity.fileNotAsSealed(ofClosing.why));
  if (ofClosing.kind === 'missing' && !acceptsMissingSeal) throw new ClosingSealMissing(integrity.fileSealMissing);
  const { sounds } = await soundsOf(record);
  const seal = await sealRecord(record, { app: appName(), at: now().utc }, await signingKey());
  const whole = packSession(record, seal, sounds);
  const lacksSounds = whole.length > most;
  const bytes = lacksSounds ? packSession(record, seal) : whole;
  const file = await openSessionFile(bytes, { now: now().utc });
  if (file.kind === 'refused') throw new Error(file.why);
  if (file.verdict.kind === 'not intact') throw new Error(integrity.packedNotIntact(file.verdict.why));
  const content = new Blob([bytes], { type: 'application/octet-stream' });
  const onSaved = (): void => void openSavedMarks().note(record.id, { entries: record.entries.length, lacksSounds });
  return { name: fileName(record.id, EXTENSION), content, onSaved, thumbprint: file.verdict.thumbprint, lacksSounds };
}

/** Without this mark, spreadsheets take the text for another encoding, and "N·m" is no unit any more. */
const BYTE_ORDER_MARK = '\uFEFF';

/** The readings of a session as a table, as far as the record can be trusted. */
export function readingsFileOf(record: SessionRecord): FileToSave {
  const content = new Blob([BYTE_ORDER_MARK, readingsCsv(record)], { type: 'text/csv;charset=utf-8' });
  return { name: fileName(record.id, '-readings.csv'), content };
}

/** The observed values of a session as a table; null where there are none. */
export function valuesFileOf(record: SessionRecord): FileToSave | null {
  if (!record.entries.some(({ body }) => body.kind === 'value observed')) return null;
  const content = new Blob([BYTE_ORDER_MARK, valuesCsv(record)], { type: 'text/csv;charset=utf-8' });
  return { name: fileName(record.id, '-values.csv'), content };
}

/** Opens a sealed file and checks all of it. Nothing of it is written to this device. It never throws. */
export async function openSealedFile(file: Blob): Promise<SessionFile> {
  if (file.size > LARGEST_FILE) return { kind: 'refused', why: integrity.fileTooLarge(LARGEST_FILE / 2 ** 20) };
  try {
    return await openSessionFile(new Uint8Array(await file.arrayBuffer()), { now: now().utc });
  } catch (error) {
    return { kind: 'refused', why: integrity.fileNotRead(messageOf(error)) };
  }
}

/** Hands a file to the browser, which saves it where its user wants it. */
export function save({ name, content, onSaved }: FileToSave): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  onSaved?.();
  // The browser has begun to save by then; the content is kept in memory until it is let go.
  setTimeout(() => URL.revokeObjectURL(link.href), LET_GO);
}

/** Milliseconds. */
const LET_GO = 60_000;
