/** Which speech model hears. */
import { said } from './said.ts';

export const speechModel = said('speechModel', {
  speechModel: 'Speech model',
  inUse: (name: string) => `In use: ${name}`,
  noneInUse: 'In use: none',
  use: (file: string, megabytes: string) => `Use ${file} (${megabytes} MB)`,
  useFromDisk: 'Use a model from disk (.zip or .tar.gz)',
});
