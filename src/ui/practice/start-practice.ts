import type { RecordBook } from '../../storage/record-book.ts';
import { practice } from '../../words/practice.ts';
import { deviceThumbprint } from '../device-seal.ts';
import type { Devices } from '../devices.ts';
import { startSession } from '../session-file.ts';
import { practiceProcedure } from './practice-procedure.ts';

/**
 * Begins a practice session and gives its name. Call it from a tap: sound and microphone are asked for.
 * @throws where nothing can be written
 */
export async function startPractice(book: RecordBook, devices: Devices, mechanic: string): Promise<string> {
  void devices.start();
  const model = devices.model();
  return startSession(book, practiceProcedure(), {
    people: { mechanic: mechanic.trim() === '' ? practice.nobody : mechanic.trim(), second: null },
    sound: 'not agreed',
    model: model && { name: model.name, sha256: model.sha256 },
    device: await deviceThumbprint(),
    prepared: [{ kind: 'prepared', fact: { of: 'warning', sentence: practice.noWork } }],
    isPractice: true,
  });
}
