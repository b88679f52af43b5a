import * as v from 'valibot';
import type { HearingFailure } from '../hearing/failures.ts';
import type { LoadOutcome, ModelSource } from '../hearing/types.ts';
import type { Settings } from '../storage/settings.ts';
import type { Devices } from './devices.ts';

const Index = v.object({
  models: v.array(v.object({ file: v.string(), bytes: v.number(), sha256: v.pipe(v.string(), v.hash(['sha256'])) })),
});

/** A local server answers at once; a hanging one must not keep the ear from the model that is kept. In milliseconds. */
const LIST_WITHIN = 3_000;
/** Where none is kept, there is nothing else to do than to wait for a slow line. In milliseconds. */
const FIRST_LIST_WITHIN = 30_000;

export type OfferedModel = Extract<ModelSource, { kind: 'served' }>;

/**
 * The speech models that lie beside the app; none where the list cannot be read (offline, or a bare host).
 * @param hasKept whether there is a kept model, which should not be waited for long
 */
export async function offeredModels(hasKept: boolean): Promise<readonly OfferedModel[]> {
  const signal = AbortSignal.timeout(hasKept ? LIST_WITHIN : FIRST_LIST_WITHIN);
  try {
    const response = await fetch('models/index.json', { signal });
    if (!response.ok) return [];
    const { models } = v.parse(Index, await response.json());
    return models.map((model) => ({
      kind: 'served',
      ...model,
      url: new URL(`models/${model.file}`, location.href).href,
    }));
  } catch {
    return [];
  }
}

/** A model to remember, or why it could not be loaded. */
export type Choice =
  { readonly ok: true; readonly model: KeptModel } | { readonly ok: false; readonly failure: HearingFailure };
type KeptModel = NonNullable<Settings['model']>;

/**
 * Loads the model chosen last, as kept by this browser; the offered one of that name where it is newer or nothing is
 * kept; else the first that is offered. @returns null where there is nothing to load
 */
export async function loadChosenModel(
  devices: Devices,
  chosen: Settings['model'],
  offered: readonly OfferedModel[],
): Promise<Choice | null> {
  const isNewest = offered.length === 0 || offered.some(({ sha256 }) => sha256 === chosen?.sha256);
  if (chosen && (chosen.from === 'disk' || isNewest)) {
    const loaded = await devices.loadModel({ kind: 'kept', name: chosen.name, sha256: chosen.sha256 });
    if (loaded.ok) return { ok: true, model: chosen };
    // Somebody has chosen another one meanwhile.
    if (loaded.failure.code === 'model load cancelled') return loaded;
  }
  const wanted = offered.find(({ file }) => file === chosen?.name) ?? offered[0];
  return wanted ? loadOffered(devices, wanted) : null;
}

/** Loads one of the offered models. */
export async function loadOffered(devices: Devices, model: OfferedModel): Promise<Choice> {
  return chosenFrom('served', model.file, await devices.loadModel(model));
}

/** Loads a model archive that a person chose from disk. */
export async function loadFromDisk(devices: Devices, file: File): Promise<Choice> {
  return chosenFrom('disk', file.name, await devices.loadModel({ kind: 'file', file }));
}

const chosenFrom = (from: KeptModel['from'], name: string, loaded: LoadOutcome): Choice =>
  loaded.ok ? { ok: true, model: { name, sha256: loaded.model.sha256, from } } : loaded;
