/** The camera as an input: off until it is asked for, then gestures, and its state in words. Pictures never leave memory. */
import { cameraFailure, type CameraFailure } from './camera-failures.ts';
import { openCamera, type CameraDoor, type CameraDoorOptions } from './camera-door.ts';
import type { Gesture, Trouble } from './gesture.ts';
import type { WatchReply, WatchRequest } from './watch-messages.ts';
import type { WatcherOptions } from './watcher.ts';

export type CameraState =
  | { readonly kind: 'off' }
  /** The browser asks whether it may, or the first picture is still to come. */
  | { readonly kind: 'opening' }
  | { readonly kind: 'watching'; readonly trouble: Trouble | null }
  | { readonly kind: 'failed'; readonly failure: CameraFailure };

export interface Camera {
  readonly state: CameraState;
  /** Which camera watches, as the browser names it to this page; empty where none does, or it has no name. */
  readonly device: string;
  /** @returns a function that takes the listener away again */
  onState(listener: (state: CameraState) => void): () => void;
  /** Gestures, at most a quarter of a second after their end. Their times are on the clock of the page. */
  onGesture(listener: (gesture: Gesture) => void): () => void;
  /** Asks for the camera and begins to watch; anew, with the scene unlearned, where it watches already. */
  start(options?: WatcherOptions): void;
  /** Lets go of the camera: its light goes out. */
  stop(): void;
}

export interface CameraFittings extends CameraDoorOptions {
  readonly startWorker?: () => Worker;
  /** How long one picture may take to look at before the worker counts as stopped, in milliseconds. */
  readonly answerWithin?: number;
}

const ANSWER_WITHIN_MS = 4000;
/** A worker that stops so often without having looked at one picture will not do it the next time. */
const MOST_TRIES = 3;

export function createCamera(fittings: CameraFittings = {}): Camera {
  return new WatchedCamera(fittings);
}

class WatchedCamera implements Camera {
  readonly #fittings: CameraFittings;
  readonly #onState = new Set<(state: CameraState) => void>();
  readonly #onGesture = new Set<(gesture: Gesture) => void>();
  #state: CameraState = { kind: 'off' };
  #door: CameraDoor | null = null;
  #worker: Worker | null = null;
  #options: WatcherOptions = {};
  #tries = 0;
  /** Runs while a picture is looked at. */
  #answerDue: ReturnType<typeof setTimeout> | null = null;

  constructor(fittings: CameraFittings) {
    this.#fittings = fittings;
  }

  get state(): CameraState {
    return this.#state;
  }

  get device(): string {
    return this.#door?.device ?? '';
  }

  onState(listener: (state: CameraState) => void): () => void {
    this.#onState.add(listener);
    return () => void this.#onState.delete(listener);
  }

  onGesture(listener: (gesture: Gesture) => void): () => void {
    this.#onGesture.add(listener);
    return () => void this.#onGesture.delete(listener);
  }

  start(options: WatcherOptions = {}): void {
    this.#options = options;
    if (this.#door && this.#worker && this.#state.kind === 'watching') {
      this.#send({ kind: 'begin', options });
      return;
    }
    this.#release();
    this.#tries = 0;
    this.#tell({ kind: 'opening' });
    if (!this.#startWorker()) return;
    this.#door = openCamera(
      {
        isReady: () => this.#worker !== null && this.#answerDue === null,
        picture: (picture, time) => this.#look(picture, time),
        lost: (failure) => this.#tell({ kind: 'failed', failure }),
        // What was before the gap has nothing to do with what comes.
        recovered: () => this.#send({ kind: 'begin', options: this.#options }),
      },
      this.#fittings,
    );
  }

  stop(): void {
    this.#release();
    this.#tell({ kind: 'off' });
  }

  #release(): void {
    this.#door?.close();
    this.#door = null;
    this.#endWorker();
  }

  #startWorker(): boolean {
    try {
      const worker = (this.#fittings.startWorker ?? startWatchWorker)();
      worker.addEventListener('message', ({ data }: MessageEvent<WatchReply>) => this.#take(worker, data));
      worker.addEventListener('error', (event) => this.#restart(worker, event.message));
      this.#worker = worker;
      this.#send({ kind: 'begin', options: this.#options });
      return true;
    } catch (error) {
      this.#tell({ kind: 'failed', failure: cameraFailure('watching unable', String(error)) });
      return false;
    }
  }

  #endWorker(): void {
    this.#worker?.terminate();
    this.#worker = null;
    if (this.#answerDue !== null) clearTimeout(this.#answerDue);
    this.#answerDue = null;
  }

  #restart(worker: Worker, why: string): void {
    if (worker !== this.#worker) return;
    this.#endWorker();
    this.#tries += 1;
    if (this.#tries >= MOST_TRIES) {
      this.#door?.close();
      this.#door = null;
      this.#tell({ kind: 'failed', failure: cameraFailure('watching unable', why) });
      return;
    }
    this.#tell({ kind: 'failed', failure: cameraFailure('watching stopped', why) });
    this.#startWorker();
  }

  #send(request: WatchRequest, transfer: Transferable[] = []): void {
    this.#worker?.postMessage(request, transfer);
  }

  #look(picture: ImageBitmap, time: number): void {
    const worker = this.#worker;
    if (!worker) {
      picture.close();
      return;
    }
    const within = this.#fittings.answerWithin ?? ANSWER_WITHIN_MS;
    this.#answerDue = setTimeout(() => this.#restart(worker, `no answer within ${within} ms`), within);
    this.#send({ kind: 'picture', picture, time }, [picture]);
  }

  #take(worker: Worker, { gesture, trouble }: WatchReply): void {
    if (worker !== this.#worker) return;
    if (this.#answerDue !== null) clearTimeout(this.#answerDue);
    this.#answerDue = null;
    this.#tries = 0;
    this.#tell({ kind: 'watching', trouble });
    if (gesture) for (const listener of this.#onGesture) listener(gesture);
  }

  #tell(state: CameraState): void {
    const before = this.#state;
    const isSame =
      state.kind === before.kind &&
      (state.kind !== 'watching' || before.kind !== 'watching' || state.trouble === before.trouble) &&
      (state.kind !== 'failed' || before.kind !== 'failed' || state.failure.code === before.failure.code);
    this.#state = state;
    if (!isSame) for (const listener of this.#onState) listener(state);
  }
}

const startWatchWorker = (): Worker => new Worker(new URL('./watch.worker.ts', import.meta.url), { type: 'module' });
