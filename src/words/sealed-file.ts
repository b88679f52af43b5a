/** A sealed file: opened to be played back, or saved. */
import { entriesCounted } from './counted.ts';
import { said } from './said.ts';

export const sealedFile = said('sealedFile', {
  close: 'Close this file',
  verdict: (file: string, verdict: string) => `${file}: ${verdict}`,
  notReadable: (why: string) => `Not readable. ${why}`,
  notIntact: (why: string) => `Not intact: ${why}. Nothing here is proven.`,
  notIntactAt: (entry: number, why: string) =>
    `Not intact at entry ${entry}: ${why}. Only the entries before it are shown.`,
  intact: (entries: number, thumbprint: string) =>
    `Intact: ${entriesCounted(entries)}, as sealed by the key ${thumbprint}. Compare the key with the one noted for the device.`,
  save: 'Save the sealed file',
  saveWithoutSeal: 'Save it all the same, sealed only now',
  saved: (file: string, thumbprint: string, lacksSounds: boolean) =>
    `${file} is sealed by the key of this device, ${thumbprint}. Note the key elsewhere.${
      lacksSounds ? ' Its sounds are too large for a file: they are on this device only.' : ''
    }`,
  notMade: (why: string) => `The file was not made: ${why}`,
});
