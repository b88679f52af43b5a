/** Something from outside that cannot be used. The message names what is wrong there, and the mend. */
export class NotUsable extends Error {
  override readonly name = 'NotUsable';
}

/** What the system says of a file that does not open, in words. */
export function openingTrouble(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return 'there is no such file; see that its name and folder are right';
    case 'EACCES':
    case 'EPERM':
      return 'it may not be read; give yourself the right to read it';
    default:
      return `it cannot be read (${code})`;
  }
}
