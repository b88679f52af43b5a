export interface Announcement {
  /** What is spoken, as words: "stud four. two four point five newton metres". A full stop makes a longer pause. */
  readonly text: string;
  /** Cuts in: stops an announcement that is not urgent and goes before those that wait. */
  readonly urgent?: boolean;
}

export type VoiceKind = 'system' | 'embedded' | 'tones';

/**
 * How an announcement ended. `toned`: there was no voice, tones called the eye to the screen.
 * `silent`: not heard, or not to its end, since the sound output stopped or the text has no word in it: only the screen
 * carries it.
 */
export type Outcome = 'said' | 'cut short' | 'toned' | 'silent';

export interface SpeakingState {
  /** 'choosing' until `unlock` has found a voice that works; announcements wait until then. */
  readonly voice: VoiceKind | 'choosing';
  /** The text that is sounding now. Set before its first sound and cleared after its last. */
  readonly saying: string | null;
  /** Why a better voice is not used or nothing is heard, in words for a person. */
  readonly why?: string;
}

/** Short signals: an answer was heard, an entry is in the log, an answer is wanted, stop work, come and help. */
export type ToneKind = 'heard' | 'logged' | 'question' | 'stop' | 'help';

export interface Speaking {
  readonly state: SpeakingState;
  /** Calls `listener` after each change of `state`, in the same turn. Returns the way to stop. */
  subscribe(listener: (state: SpeakingState) => void): () => void;
  /** Queues an announcement and resolves when it is over. Never rejects. */
  say(announcement: Announcement): Promise<Outcome>;
  /** Stops now and empties the queue: everything in it is 'cut short'. */
  hush(): void;
  /**
   * Sounds a short signal at once, beside whatever is being said, and resolves when it is over. Does nothing where no sound
   * can be made. It never rejects.
   * @param noise the background of the room in dBFS, as far as it is known: the louder it is, the louder the signal
   */
  tone(kind: ToneKind, noise?: number | null): Promise<void>;
  /**
   * Call from a user gesture: starts the sound output and chooses the voice. Never rejects; `state` tells the result.
   * Calling it again restarts the sound output, and tries the better voices again where only tones were left.
   */
  unlock(): Promise<void>;
  /** Stops, ends the worker and releases the sound output. What is said afterwards is 'cut short'. */
  close(): Promise<void>;
}
