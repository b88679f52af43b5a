import type { Tool } from './procedure.ts';

/** Decimal places that a tool can show: no value is shown finer than it can be read. */
export const placesOf = ({ resolution }: Tool): number => String(resolution.value).split('.')[1]?.length ?? 0;
