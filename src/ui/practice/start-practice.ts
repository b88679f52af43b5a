import { practice } from '../../words/practice.ts';
import type { Shop } from '../app.tsx';
import { deviceThumbprint } from '../device-seal.ts';
import { startFor } from '../mute.ts';
import { startSession } from '../session-file.ts';
import { practiceProcedure } from './practice-procedure.ts';

/**
 * Begins a practice session and gives its name. Call it from a tap: sound and microphone are asked for.
 * @throws where nothing can be written
 */
export async function startPractice(shop: Shop, typed: string): Promise<string> {
  const mechanic = typed.trim() || practice.nobody;
  startFor(shop, mechanic, true);
  const model = shop.devices.model();
  return startSession(shop.book, practiceProcedure(), {
    people: { mechanic, second: null },
    sound: 'not agreed',
    model: model && { name: model.name, sha256: model.sha256 },
    device: await deviceThumbprint(),
    prepared: [{ kind: 'prepared', fact: { of: 'warning', sentence: practice.noWork } }],
    isPractice: true,
  });
}
