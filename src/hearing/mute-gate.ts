import type { MuteReason } from './types.ts';

/** A room goes on sounding, and the loudspeaker lags, this long after the app's own voice. */
const OWN_VOICE_TAIL_MS = 300;

/** When the ear is closed, and why. All times are milliseconds on one clock. */
export class MuteGate {
  readonly #reasons = new Set<MuteReason>();
  #openFrom = -Infinity;
  #ownVoiceUntil = -Infinity;

  mute(why: MuteReason): void {
    this.#reasons.add(why);
    this.#openFrom = Infinity;
  }

  /** @returns when the ear opens: not before a reason that still holds is gone (then it is infinite) */
  unmute(why: MuteReason, now: number): number {
    if (!this.#reasons.delete(why)) return this.#openFrom;
    if (why === 'own voice') this.#ownVoiceUntil = now + OWN_VOICE_TAIL_MS;
    if (this.#reasons.size === 0) this.#openFrom = Math.max(now, this.#ownVoiceUntil);
    return this.#openFrom;
  }

  /** What a person asked for is named before the app's own voice. */
  reasonAt(now: number): MuteReason | null {
    if (this.#reasons.has('asked')) return 'asked';
    return now < this.#openFrom ? 'own voice' : null;
  }

  /** May sound be heard that was taken from this time on? */
  admits(time: number): boolean {
    return time >= this.#openFrom;
  }
}
