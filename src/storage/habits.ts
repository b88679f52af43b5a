import { get, update } from 'idb-keyval';
import * as v from 'valibot';
import { isSamePerson } from '../session/people.ts';

/** One person's own settings of one device (switches, touch), by name; '' is anybody whose name is not typed. */
export interface Habit<Value> {
  readonly name: string;
  readonly value: Value;
}

/** What is kept of the habits of all people on this device. Nothing of a job: that is in the record. */
export interface HabitBook<Value> {
  /** All that can be read; what cannot is left out, and that person begins with the defaults. */
  load(): Promise<readonly Habit<Value>[]>;
  /** Keeps one in place of the same person's last. @returns all that are kept, and this one where the browser will not keep it */
  keep(habit: Habit<Value>): Promise<readonly Habit<Value>[]>;
  /** Deletes one. @throws where it cannot be deleted: nobody must believe that it was */
  forget(name: string): Promise<readonly Habit<Value>[]>;
}

const Kept = v.strictObject({ name: v.string(), value: v.unknown() });

/**
 * The habits kept under one key.
 * @param read checks a value at this door; null where it is none
 */
export function openHabitBook<Value>(key: string, read: (raw: unknown) => Value | null): HabitBook<Value> {
  const readable = (kept: unknown): readonly Habit<Value>[] =>
    !Array.isArray(kept)
      ? []
      : kept.flatMap((each) => {
          if (!v.is(Kept, each)) return [];
          const value = read(each.value);
          return value === null ? [] : [{ name: each.name, value }];
        });
  const without = (habits: readonly Habit<Value>[], name: string): readonly Habit<Value>[] =>
    habits.filter((habit) => !isSamePerson(habit.name, name));
  return {
    async load() {
      return readable(await get<unknown>(key).catch(() => undefined));
    },
    async keep(habit) {
      let all: readonly Habit<Value>[] = [habit];
      const change = (kept: unknown) => (all = [...without(readable(kept), habit.name), habit]);
      await update<unknown>(key, change).catch(() => undefined);
      return all;
    },
    async forget(name) {
      let left: readonly Habit<Value>[] = [];
      await update<unknown>(key, (kept) => (left = without(readable(kept), name)));
      return left;
    },
  };
}

/** A person's habit; where there is none, that of anybody on this device; null where there is none either. */
export const habitOf = <Value>(habits: readonly Habit<Value>[], name: string): Value | null =>
  (habits.find((habit) => isSamePerson(habit.name, name)) ?? habits.find((habit) => habit.name === ''))?.value ?? null;
