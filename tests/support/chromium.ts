export { openBrowser, type Browser } from '../../src/cli/hear/browser.ts';

/** Answers every permission question with yes and offers a made-up microphone and camera. */
export const FAKE_DEVICES = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];

/** Plays a WAV file as the microphone, once, from the moment the microphone is opened. */
export const fakeMicrophone = (wav: string): string => `--use-file-for-fake-audio-capture=${wav}%noloop`;
