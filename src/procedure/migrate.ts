/** Older files are brought to the version of today, one version after another. Newer ones are refused. */
import { shown, type Fault } from './fault.ts';
import { VERSION } from './schema.ts';

export type JsonObject = Readonly<Record<string, unknown>>;

/** For each older version, how a file of it becomes one of the next version. A migration sets no version itself. */
export type Migrations = ReadonlyMap<number, (file: JsonObject) => JsonObject>;

/** Version 1 is the first, so there is nothing to migrate yet. */
export const MIGRATIONS: Migrations = new Map();

export type Migrated =
  { readonly kind: 'current'; readonly file: JsonObject } | { readonly kind: 'refused'; readonly fault: Fault };

/** A file of any known version as one of the version asked for. The file given is not changed. */
export function migrate(file: JsonObject, migrations: Migrations = MIGRATIONS, current: number = VERSION): Migrated {
  const { version } = file;
  const expected = current === 1 ? 'expected 1' : `expected a whole number from 1 to ${current}`;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refused(`found ${shown(version)}, ${expected}, the version of the format`);
  }
  if (version > current) {
    return refused(`found ${version}, ${expected}: this file needs a newer program`);
  }
  if (version === current) return { kind: 'current', file };
  const step = migrations.get(version);
  if (step === undefined)
    return refused(`found ${version}, which this program can no longer read, expected ${current}`);
  return migrate({ ...step(file), version: version + 1 }, migrations, current);
}

const refused = (message: string): Migrated => ({ kind: 'refused', fault: { path: 'version', message } });
