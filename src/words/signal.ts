/** The signal words of ANSI Z535, gravest first. */
export type Signal = 'danger' | 'warning' | 'caution' | 'notice';
