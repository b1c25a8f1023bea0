import type { IsoDate } from '../calendar.ts';
import type { OutlookInput } from '../outlook.ts';

/** The day from which what comes is told: today at the lake, in a view of the past the day asked for. */
export function nowOf({ since, asOf }: Pick<OutlookInput, 'since' | 'asOf'>): IsoDate {
	return since?.now ?? asOf;
}
