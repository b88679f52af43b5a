/** How the name of every practice session begins; it is in each of its entries, and in the names of its files. */
export const PRACTICE = 'practice-';

/** Whether a session is practice: a record of its own kind, that nobody takes for work. */
export const isPractice = (session: string): boolean => session.startsWith(PRACTICE);
