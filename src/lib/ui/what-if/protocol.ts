import type { Change } from '#lib/model/ensemble/what-if.ts';
import type { OutlookInput } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { ReadingsEffect } from '#lib/model/readings-effect.ts';
import type { Units } from '../units-setting.ts';
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
export type ToWorker =
	| { kind: 'input'; input: OutlookInput }
	| ({ kind: 'ask' } & Ask)
	/** What readings that are not stored yet make of the estimate. */
	| { kind: 'readings'; id: number; more: readonly Reading[]; units: Units };

export type FromWorker =
	| { kind: 'answer'; id: number; answer: IfAnswer | null }
	| { kind: 'effect'; id: number; effect: ReadingsEffect | null }
	| { kind: 'failed'; id: number; message: string };
