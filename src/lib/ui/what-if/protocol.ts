import type { LoadCase } from '#lib/model/load-case.ts';
import type { OutlookInput } from '#lib/model/outlook.ts';
import type { IfAnswer } from './answer.ts';

/** What a person tries out, from today on. Nothing of it is ever stored. */
export interface Change {
	/** Share of the snow that lies and falls on the site: 0 cleared, 1 as it is. */
	snowFactor: number;
	/** Added to every coming temperature. */
	warming_K: number;
	extraLoad: LoadCase | null;
}

export const NO_CHANGE: Change = { snowFactor: 1, warming_K: 0, extraLoad: null };

/** Few enough to answer within a frame of 50 ms while something is dragged. */
export const DRAG_MEMBERS = 100;

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
