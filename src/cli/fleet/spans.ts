/** How long things took: what began with one entry and ended with another. */
import type { Entry } from '../../record/entry.ts';
import { currentStep, type SessionState } from '../../session/state.ts';
import { secondsBetween } from './measure.ts';
import type { Row } from './tables.ts';

/** Each time that work was at a step, seen entry by entry. */
export class StepVisits {
  readonly #ended: Row<'steps'>[] = [];
  #since: Date | null = null;
  readonly #session: string;

  constructor(session: string) {
    this.#session = session;
  }

  see(before: SessionState, { at, body }: Entry, after: SessionState): void {
    const now = new Date(at.utc);
    this.#since ??= now;
    if (after.at === before.at) return;
    this.#ended.push(...this.#row(before, now, OUTCOMES.get(body.kind) ?? 'done'));
    this.#since = now;
  }

  /** All of them, with the step that work was at when the record ended. */
  rows = (last: SessionState): Row<'steps'>[] => [...this.#ended, ...this.#row(last, null, 'open')];

  #row(state: SessionState, ended: Date | null, outcome: string): Row<'steps'>[] {
    const step = currentStep(state);
    if (!step || !this.#since) return [];
    const span = { began_at: this.#since, ended_at: ended, seconds: ended && secondsBetween(this.#since, ended) };
    return [{ session: this.#session, step: step.id, kind: step.kind, title: step.title, ...span, outcome }];
  }
}

const OUTCOMES: ReadonlyMap<Entry['body']['kind'], string> = new Map([
  ['step skipped', 'skipped'],
  ['step taken back', 'taken back'],
]);

/** Each time that work stood still, seen entry by entry. */
export class Stops {
  readonly #ended: Row<'stops'>[] = [];
  #open: { readonly kind: string; readonly step: string | null; readonly since: Date } | null = null;
  readonly #session: string;

  constructor(session: string) {
    this.#session = session;
  }

  see(before: SessionState, { at, body }: Entry, after: SessionState): void {
    const now = new Date(at.utc);
    const step = currentStep(before)?.id ?? null;
    if (after.phase === 'standing by') {
      // Who hands over out of a stand-by stands by no longer: the one ends where the other begins.
      if (before.phase !== 'standing by' || after.handingOver !== before.handingOver) {
        this.#end(now);
        this.#open = { kind: body.kind === 'handover begun' ? 'hand over' : 'stand by', step, since: now };
      }
    } else if (before.phase === 'standing by') this.#end(now);
    // Nothing was written while the page was closed, or nobody worked: the time before is the pause.
    else if (after.breakOf !== null && after.breakOf !== before.breakOf && before.lastAt !== null)
      this.#add('break', step, new Date(before.lastAt), now);
  }

  /** All of them, with the one that lasted when the record ended. */
  rows(): Row<'stops'>[] {
    if (this.#open) this.#add(this.#open.kind, this.#open.step, this.#open.since, null);
    this.#open = null;
    return this.#ended;
  }

  #end(now: Date): void {
    if (this.#open) this.#add(this.#open.kind, this.#open.step, this.#open.since, now);
    this.#open = null;
  }

  #add(kind: string, step: string | null, began_at: Date, ended_at: Date | null): void {
    const seconds = ended_at && secondsBetween(began_at, ended_at);
    this.#ended.push({ session: this.#session, kind, step, began_at, ended_at, seconds });
  }
}
