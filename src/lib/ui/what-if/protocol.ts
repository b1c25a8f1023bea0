import type { Change } from '#lib/model/ensemble/what-if.ts';
import type { OutlookInput } from '#lib/model/outlook.ts';
import type { IfAnswer } from './answer.ts';

/** Nothing of a change is ever stored. */
export const NO_CHANGE: Change = { snowFactor: 1, warming_K: 0, extraLoad: null };

/** A question, numbered so that its answer can be told from an older one's. */
export interface Ask {
	id: number;
	change: Change;
	members: number;
}

/** The input comes first and once. */
export type ToWorker = { kind: 'input'; input: OutlookInput } | ({ kind: 'ask' } & Ask);

export type FromWorker =
	| { kind: 'answer'; id: number; answer: IfAnswer | null }
	| { kind: 'failed'; id: number; message: string };
