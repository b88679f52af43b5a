/** The words of an error for a person. */
export const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
