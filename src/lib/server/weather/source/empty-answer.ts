import type { SourceAnswer } from './contract.ts';

/** An answer that brought nothing, to be filled in. */
export function emptyAnswer(): SourceAnswer {
	return {
		outcome: 'failed',
		hours: [],
		days: [],
		issuedAt: null,
		isIssueTold: false,
		station: null,
		hasPrecipitation: false,
		faults: [],
		validators: null,
		freshUntilAt: null,
		retryAfter_s: null,
		calls: 0,
		bytes: 0
	};
}
