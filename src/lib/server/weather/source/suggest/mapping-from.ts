import type { ValueRole } from '../../cells/units.ts';
import { mapping as mappingSchema, type Mapping, type ValueMapping } from '../schema.ts';
import { timeFormOf } from './time-form.ts';
import { isDaily, paceOf, type TimeChoice } from './choose-time.ts';
import type { Candidate } from './choose-values.ts';
import type { Table } from './table.ts';

/** What was found in one table. */
export interface Understood {
	table: Table;
	/** `null` where every leaf has times of its own. */
	time: TimeChoice | null;
	candidates: ReadonlyMap<ValueRole, Candidate[]>;
	score: number;
}

export interface Extras {
	zone: Mapping['time']['zone'];
	/** What is to be said of the zone. */
	why: string;
	issued: string | undefined;
	station: Mapping['station'];
}

/** The mapping that a table suggests, with what had to be assumed for it. */
export function mappingFrom(
	{ table, time, candidates }: Understood,
	{ zone, why, issued, station }: Extras
): { mapping: Mapping | null; words: string[] } {
	const chosen = time ?? ownTime(candidates);
	if (!chosen) return { mapping: null, words: [] };
	const step = isDaily(chosen.step_s, chosen.leaf.values, chosen.form) ? 'daily' : 'hourly';
	const stamp =
		step === 'hourly' && chosen.isWidening && chosen.form !== 'interval' ? 'instant' : 'start';
	const isPlain = !chosen.hasOffset && !chosen.form.startsWith('epoch');
	const draft = {
		layout: table.layout,
		...(table.rows === null ? {} : { rows: table.rows }),
		step,
		time: { path: chosen.path, form: chosen.form, zone: isPlain ? zone : zoneOf(chosen), stamp },
		values: valuesOf(candidates, step, stamp, chosen.path),
		...(issued === undefined ? {} : { issued }),
		...(station === undefined ? {} : { station })
	};
	const read = mappingSchema.safeParse(draft);
	const words = [...(isPlain && step === 'hourly' ? [why] : []), ...amountWords(candidates, step)];
	return { mapping: read.success ? read.data : null, words };
}

function zoneOf({ form }: TimeChoice): Mapping['time']['zone'] {
	return form.startsWith('epoch') ? 'utc' : 'offset';
}

function ownTime(candidates: ReadonlyMap<ValueRole, Candidate[]>): TimeChoice | null {
	const leaf = candidates.get('air')?.[0]?.leaf;
	if (!leaf?.timePath) return null;
	const times = leaf.times ?? [];
	const form = timeFormOf(times);
	return form === null ? null : { leaf, path: leaf.timePath, form, ...paceOf(times, form) };
}

function valuesOf(
	candidates: ReadonlyMap<ValueRole, Candidate[]>,
	step: Mapping['step'],
	stamp: ValueMapping['stamp'],
	timePath: string
): Record<string, unknown> {
	const values: Record<string, unknown> = {};
	for (const [role, [first, second]] of candidates) {
		if (!first || first.unit === null) continue;
		// A lowest and a highest of the day say nothing of an hour that has its own temperature.
		const isExtreme = role === 'min' || role === 'max';
		if (isExtreme && step === 'hourly' && candidates.get('air')?.[0]) continue;
		const main = valueOf(first, stamp, timePath);
		const isLonger = (second?.guess.duration_h ?? 0) > (first.guess.duration_h ?? Infinity);
		values[role] =
			second && second.unit !== null && isLonger
				? { ...main, orElse: valueOf(second, stamp, timePath) }
				: main;
	}
	return values;
}

function valueOf(
	{ role, leaf, unit, guess }: Candidate,
	stamp: ValueMapping['stamp'],
	timePath: string
): Record<string, unknown> {
	const isAmount = role === 'precipitation' || role === 'snowfall';
	const own = isAmount ? (guess.stamp ?? (stamp === 'instant' ? 'start' : null)) : null;
	return {
		path: leaf.path,
		unit,
		...(own === null ? {} : { stamp: own }),
		...(isAmount && guess.duration_h !== null ? { duration_h: guess.duration_h } : {}),
		...(leaf.timePath === null || leaf.timePath === timePath ? {} : { time: leaf.timePath })
	};
}

function amountWords(
	candidates: ReadonlyMap<ValueRole, Candidate[]>,
	step: Mapping['step']
): string[] {
	const first = candidates.get('precipitation')?.[0] ?? candidates.get('snowfall')?.[0];
	if (!first)
		return ['No precipitation was found: snow will be unknown, and the doubt wider for it.'];
	if (step === 'daily' || first.guess.stamp !== null) return [];
	return [
		'Whether an amount is of the hour before its time or of the hour after it is not told by the answer; the hour after is taken, see what the service says.'
	];
}
