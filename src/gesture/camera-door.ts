/**
 * The door to the camera: opens it, takes a picture out of it some fifteen times a second, and takes it up again when it
 * was lost. What goes wrong is told in one word of a list.
 */
import { cameraFailure, codeOfDeviceError, type CameraFailure, type CameraFailureCode } from './camera-failures.ts';
import { HEIGHT, LEAST_STEP_MS, middleOf, WIDTH } from './frame.ts';

/** Small and slow: no more is looked at, and a small picture costs less to fetch. */
const CONSTRAINTS: MediaStreamConstraints = {
  audio: false,
  video: { width: { ideal: 320 }, height: { ideal: 240 }, frameRate: { ideal: 15, max: 30 }, facingMode: 'user' },
};
/** So long without a picture, on a page that is seen, and the camera gives none. */
const SILENT_MS = 3000;
const CHECK_MS = 500;
const RETRY_MS = 2000;

export interface CameraSink {
  /** One picture, 160 × 120, which the taker closes. @param time when it was taken, milliseconds on the page's clock */
  picture(picture: ImageBitmap, time: number): void;
  /** Whether the next picture may come: one that would have to wait is not made. */
  isReady(): boolean;
  lost(failure: CameraFailure): void;
  /** Pictures come. */
  recovered(): void;
}

export interface CameraDoorOptions {
  /** Asks for the device; the default is the person's own camera, the one that looks at them where there are two. */
  readonly getStream?: () => Promise<MediaStream>;
}

export interface CameraDoor {
  /** Which camera it is, as the browser names it to this page; empty where it does not. */
  readonly device: string;
  close(): void;
}

export function openCamera(sink: CameraSink, options: CameraDoorOptions = {}): CameraDoor {
  return new OpenCamera(sink, options.getStream ?? (() => navigator.mediaDevices.getUserMedia(CONSTRAINTS)));
}

class OpenCamera implements CameraDoor {
  readonly #sink: CameraSink;
  readonly #getStream: () => Promise<MediaStream>;
  readonly #video = document.createElement('video');
  readonly #closing = new AbortController();
  #stream: MediaStream | null = null;
  #lost: CameraFailureCode | null = null;
  #isAcquiring = false;
  #isTaking = false;
  #tookAt = -Infinity;
  #lastPicture = performance.now();
  #lastTry = -Infinity;

  constructor(sink: CameraSink, getStream: () => Promise<MediaStream>) {
    this.#sink = sink;
    this.#getStream = getStream;
    this.#video.muted = true;
    this.#video.playsInline = true;
    // Outside a secure page there are no devices to ask for.
    if (isSecureContext) {
      this.#watch();
      void this.#acquire();
    } else this.#report('page not secure', location.origin);
  }

  get device(): string {
    return this.#stream?.getVideoTracks()[0]?.getSettings().deviceId ?? '';
  }

  close(): void {
    this.#closing.abort();
    this.#release();
  }

  async #acquire(): Promise<void> {
    if (this.#isAcquiring) return;
    this.#isAcquiring = true;
    this.#lastTry = performance.now();
    try {
      const stream = await this.#getStream();
      this.#release();
      this.#stream = stream;
      if (this.#closing.signal.aborted) return this.#release();
      for (const track of stream.getVideoTracks())
        track.addEventListener('ended', () => stream === this.#stream && this.#report('camera lost'));
      this.#lastPicture = performance.now();
      this.#video.srcObject = stream;
      this.#await(stream);
      await this.#video.play();
    } catch (error) {
      // A stream that was replaced while it began to play is no fault.
      if (error instanceof DOMException && error.name === 'AbortError' && this.#stream) return;
      this.#report(codeOfDeviceError(error), error instanceof Error ? error.message : String(error));
    } finally {
      this.#isAcquiring = false;
    }
  }

  #release(): void {
    for (const track of this.#stream?.getTracks() ?? []) track.stop();
    this.#stream = null;
    this.#video.srcObject = null;
  }

  /** Asks for the next picture of a stream, and that one for the one after it. */
  #await(stream: MediaStream): void {
    this.#video.requestVideoFrameCallback((now, { captureTime }) => {
      if (stream !== this.#stream) return;
      void this.#take(captureTime ?? now);
      this.#await(stream);
    });
  }

  async #take(time: number): Promise<void> {
    if (this.#isTaking || time - this.#tookAt < LEAST_STEP_MS || !this.#sink.isReady()) return this.#came();
    this.#isTaking = true;
    this.#tookAt = time;
    try {
      const { left, top, width, height } = middleOf(this.#video.videoWidth, this.#video.videoHeight);
      const picture = await createImageBitmap(this.#video, left, top, width, height, {
        resizeWidth: WIDTH,
        resizeHeight: HEIGHT,
        resizeQuality: 'medium',
      });
      this.#came();
      if (this.#closing.signal.aborted) picture.close();
      else this.#sink.picture(picture, time);
    } catch {
      // The picture was gone before it was taken. Where none can be taken at all, none comes, and the check tells that.
    } finally {
      this.#isTaking = false;
    }
  }

  /** A picture came, and could be taken where it was wanted. */
  #came(): void {
    this.#lastPicture = performance.now();
    if (!this.#lost) return;
    this.#lost = null;
    this.#sink.recovered();
  }

  #report(code: CameraFailureCode, detail = ''): void {
    if (this.#closing.signal.aborted || this.#lost === code) return;
    this.#lost = code;
    this.#sink.lost(cameraFailure(code, detail));
  }

  #watch(): void {
    const { signal } = this.#closing;
    const check = setInterval(() => {
      const now = performance.now();
      // A page that nobody sees gets no pictures, and nobody is told anything there.
      if (document.visibilityState === 'hidden') this.#lastPicture = now;
      if (!this.#lost && !this.#isAcquiring && now - this.#lastPicture > SILENT_MS)
        this.#report('camera silent', `none for ${SILENT_MS / 1000} s`);
      if (this.#lost && now - this.#lastTry > RETRY_MS) void this.#retryUnasked();
    }, CHECK_MS);
    signal.addEventListener('abort', () => clearInterval(check));
    navigator.mediaDevices.addEventListener('devicechange', () => void this.#retryUnasked(), { signal });
  }

  /** Never brings up a question out of nowhere. */
  async #retryUnasked(): Promise<void> {
    if (!this.#lost || this.#isAcquiring) return;
    this.#lastTry = performance.now();
    const name = 'camera' as PermissionName; // Not in the type library, yet in the standard.
    const allowed = await navigator.permissions.query({ name }).then(
      ({ state }) => state === 'granted',
      () => false,
    );
    if (allowed && this.#lost && !this.#closing.signal.aborted) await this.#acquire();
  }
}
