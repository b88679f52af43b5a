/** The sound around readings: why it was not kept, and how it is deleted. */
import { said } from './said.ts';

export const keptSounds = said('keptSounds', {
  keptWithIt: (count: number) => `Sounds kept with it: ${count}`,
  delete: 'Delete the sounds',
  whoDeletes: 'Who deletes them',
  typeWhoDeletes: 'Type the name of the one who deletes them: the record says who it was.',
  deleteFilesAsWell: 'Files that were saved before still hold these sounds: delete those files as well.',
  deleteForGood: 'Delete for good',
  keep: 'Keep them',
  notDeleted: (why: string) => `The sounds could not be deleted: ${why}`,
  writtenElsewhere: 'Another window works on this session. Close it first.',
  recordBroken: 'Its record is broken: nothing more is written to it.',

  notAsked: (name: string) => `${name} was not asked whether sound may be kept.`,
  noSound: 'The microphone gave no sound.',
  roomForRecord: 'What room is left is kept for the record itself.',
  notWritten: (why: string) => `It could not be written: ${why}`,
});
