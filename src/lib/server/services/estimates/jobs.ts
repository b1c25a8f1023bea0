import { earlyIceSteps, type EarlyIce, type EarlyIceInput } from '#lib/model/early/early-ice.ts';
import { outlookSteps, type Outlook, type OutlookInput } from '#lib/model/outlook.ts';
import type { Steps } from '#lib/model/steps.ts';
import { changesSteps, type WhatChanges } from './changes-steps.ts';

/** What each kind of long run is made from. */
export interface Contents {
	outlook: { input: OutlookInput };
	changes: { input: OutlookInput; floodsWith_kg_m2: number | null };
	earlyIce: EarlyIceInput;
}

export interface Answers {
	outlook: Outlook | null;
	changes: WhatChanges | null;
	earlyIce: EarlyIce;
}

export type Kind = keyof Answers;

export interface Job<K extends Kind = Kind> {
	kind: K;
	content: Contents[K];
}

const STEPS: { [K in Kind]: (content: Contents[K]) => Steps<Answers[K]> } = {
	outlook: ({ input }) => outlookSteps(input),
	changes: ({ input, floodsWith_kg_m2 }) => changesSteps(input, floodsWith_kg_m2),
	earlyIce: earlyIceSteps
};

/** The run itself: the same wherever it is made. */
export function stepsOf<K extends Kind>({ kind, content }: Job<K>): Steps<Answers[K]> {
	return STEPS[kind](content);
}
