import type { AskedOf } from '../../storage/as-asked.ts';
import type { LakeSourceRow } from '../../storage/lake-sources.ts';
import type { Fault, SourceAnswer, WeatherSource } from '../../weather/source/contract.ts';
import type { LakeRecord } from '../lakes.ts';
import type { Refusal } from './allowance.ts';
import type { Pace } from './pace.ts';

/** A lake's use of a source, with all that asking needs. */
export interface Asking {
	lake: LakeRecord;
	use: LakeSourceRow;
	source: WeatherSource;
	/** What its answers are stored for. */
	asked: AskedOf;
	key: string | null;
	isOnDemand: boolean;
	/** Calls of the daily limit that are left for others. */
	reserve: number;
	pace: Pace;
	signal: AbortSignal;
}

/** What it takes to store an answer. */
export interface Storing {
	use: Pick<LakeSourceRow, 'id' | 'lake_id'>;
	asked: AskedOf;
}

export type Asked =
	| { kind: 'answered'; answer: SourceAnswer; faults: readonly Fault[] }
	| { kind: 'refused'; refusal: Refusal }
	/** Broken off, or source, station or place were changed meanwhile: nothing of it is stored. */
	| { kind: 'stopped' | 'outdated' };

/** What is done with an answer. */
export interface Taking {
	/** Tells how many hours and days it stored. */
	store: (answer: SourceAnswer) => Promise<number | 'outdated'>;
	/** Looks at what is stored then. */
	moreFaults: () => Promise<Fault[]>;
}
