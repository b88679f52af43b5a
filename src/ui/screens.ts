/** The screens that the first paint does without: one file of the build for a job, another for who writes procedures. */
import { later } from './later.tsx';

const job = () => import('./job-screens.ts');

export const WorkScreen = later(() => job().then((screens) => screens.WorkScreen));
export const PrepareScreen = later(() => job().then((screens) => screens.PrepareScreen));
export const CheckScreen = later(() => job().then((screens) => screens.CheckScreen));
export const DisplayScreen = later(() => job().then((screens) => screens.DisplayScreen));
export const ReplayScreen = later(() => job().then((screens) => screens.ReplayScreen));
export const SealedFileReplay = later(() => job().then((screens) => screens.SealedFileReplay));
export const SecondScreen = later(() => job().then((screens) => screens.SecondScreen));
export const KeptSessions = later(() => job().then((screens) => screens.KeptSessions));
export const EditorScreen = later(() => import('./editor/editor-screen.tsx').then((screens) => screens.EditorScreen));
export const TeachScreen = later(() => job().then((screens) => screens.TeachScreen));
