/** What a job may open comes in one piece, right after the start screen: nobody waits for a line that is gone. */
export { PrepareScreen } from './prepare/prepare-screen.tsx';
export { KeptSessions } from './parts/kept-sessions.tsx';
export { startPractice } from './practice/start-practice.ts';
export { openSealedFile } from './saved-files.ts';
export { CheckScreen } from './screens/check-screen.tsx';
export { DisplayScreen } from './screens/display-screen.tsx';
export { ReplayScreen, SealedFileReplay } from './screens/replay-screen.tsx';
export { SecondScreen } from './screens/second-screen.tsx';
export { WorkScreen } from './screens/work-screen.tsx';
export { TeachScreen } from './teach/teach-screen.tsx';
