import { cameraFailures } from '../words/camera-failures.ts';

/** What can go wrong with the camera. The code is for the program, the sentence for a person, the detail for a report. */
export interface CameraFailure {
  readonly code: CameraFailureCode;
  readonly sentence: string;
  readonly detail: string;
}

export type CameraFailureCode = keyof typeof cameraFailures;

export const cameraFailure = (code: CameraFailureCode, detail = ''): CameraFailure => ({
  code,
  sentence: cameraFailures[code],
  detail,
});

/** By the names of the Media Capture and Streams standard. */
export function codeOfDeviceError(error: unknown): CameraFailureCode {
  switch (error instanceof DOMException ? error.name : '') {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'camera refused';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'camera absent';
    default:
      return 'camera busy';
  }
}
