import { writeFileSync } from 'node:fs';
import type { Film } from './gesture-clips/film.ts';
import { y4mOf } from './gesture-clips/y4m.ts';

/** Writes a film as Chromium's own made-up camera plays it: again and again, from the moment the camera is opened. */
export function writeFakeCamera(film: Film, file: string): void {
  writeFileSync(file, y4mOf(film.shots(), { rate: `${film.rate}:1`, mode: '420jpeg', times: 2 }));
}

export const fakeCamera = (file: string): string => `--use-file-for-fake-video-capture=${file}`;
