import type { EnsembleBench } from './ensemble-report.ts';

/** What can be timed by itself, in the order of running. */
export const PARTS = [
	'model',
	'storing',
	'keepingUp',
	'serving',
	'phone',
	'lakeCost',
	'load'
] as const;

export type Part = (typeof PARTS)[number];

/** How much of each is timed. */
export interface Bench {
	ensemble: EnsembleBench;
	/** Lakes that are refreshed, and winters that are stored. */
	lakes: number;
	winters: number;
	/** Lakes whose pages are asked for, and for how long. */
	served: { lakes: number; duration_ms: number };
	/** Visits by phone to one page. */
	visits: number;
	/** Lakes whose cost is the median of. */
	costed: number;
	/** How long pages are polled while people write; the whole of it where nothing else is timed. */
	load: { duration_ms: number; alone_ms: number };
}

/**
 * The parts that `--only` names, with commas between them; all without it.
 * @throws RangeError for a name that is none.
 */
export function partsOf(only: string | undefined): ReadonlySet<Part> {
	if (only === undefined) return new Set(PARTS);
	const names = only.split(',').map((name) => name.trim());
	const parts = names.map((name) => PARTS.find((part) => part === name));
	const wrong = names.filter((_, index) => parts[index] === undefined);
	if (wrong.length > 0)
		throw new RangeError(
			`--only does not know "${wrong.join(', ')}"; it takes some of ${PARTS.join(', ')}`
		);
	return new Set(parts.filter((part) => part !== undefined));
}
