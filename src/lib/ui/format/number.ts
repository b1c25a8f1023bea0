import { grouped, signed } from '#lib/model/shown-number.ts';

export { grouped, signed };

/** What stands where a number is not known. */
export const UNKNOWN = 'not known';

/** @example counted(1, 'hole') // => '1 hole' */
export function counted(count: number, noun: string): string {
	return `${grouped(count)} ${noun}${count === 1 ? '' : 's'}`;
}
