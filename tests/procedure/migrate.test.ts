import { describe, expect, it } from 'vitest';
import { migrate, MIGRATIONS, type JsonObject, type Migrations } from '../../src/procedure/migrate.ts';
import { VERSION } from '../../src/procedure/schema.ts';

describe('migration', () => {
  it('knows every version before the one of today', () => {
    const older = Array.from({ length: VERSION - 1 }, (_, i) => i + 1);
    expect([...MIGRATIONS.keys()].sort((a, b) => a - b)).toEqual(older);
  });

  it('leaves a file of today as it is', () => {
    const file = { version: VERSION, title: 'x' };
    expect(migrate(file)).toEqual({ kind: 'current', file });
  });

  describe('with made-up versions', () => {
    const migrations: Migrations = new Map<number, (file: JsonObject) => JsonObject>([
      [1, ({ name, ...rest }: JsonObject) => ({ ...rest, title: name })],
      [2, (file: JsonObject) => ({ ...file, steps: [file.step] })],
    ]);

    it('goes through all versions in between, one after another', () => {
      expect(migrate({ version: 1, name: 'x', step: 'a' }, migrations, 3)).toEqual({
        kind: 'current',
        file: { version: 3, title: 'x', step: 'a', steps: ['a'] },
      });
    });

    it('starts at the version of the file', () => {
      expect(migrate({ version: 2, title: 'x', step: 'a' }, migrations, 3)).toMatchObject({
        file: { version: 3, title: 'x', steps: ['a'] },
      });
    });

    it('does not change the file that was given', () => {
      const file = Object.freeze({ version: 1, name: 'x', step: 'a' });
      migrate(file, migrations, 3);
      expect(file).toEqual({ version: 1, name: 'x', step: 'a' });
    });

    it('refuses a version with no way forward', () => {
      expect(migrate({ version: 1 }, new Map(), 3)).toEqual({
        kind: 'refused',
        fault: { path: 'version', message: 'found 1, which this program can no longer read, expected 3' },
      });
    });
  });
});
