/** Older files are brought to the version of today, one version after another. Newer ones are refused. */
import { procedureFile } from '../words/procedure-file.ts';
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
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refused(procedureFile.noVersion(shown(version), current));
  }
  if (version > current) return refused(procedureFile.newer(version, current));
  if (version === current) return { kind: 'current', file };
  const step = migrations.get(version);
  if (step === undefined) return refused(procedureFile.tooOld(version, current));
  return migrate({ ...step(file), version: version + 1 }, migrations, current);
}

const refused = (message: string): Migrated => ({ kind: 'refused', fault: { path: 'version', message } });
