import type { Decimal } from '../../cells/numbers.ts';
import { inQuotes } from '../../cells/quote.ts';
import { toSi } from '../../cells/units.ts';
import type { Column } from './columns.ts';
import { rawNumber } from './raw-number.ts';
import type { Tally } from './tally.ts';

/** Seldom enough to be kept, often enough to tell a unit by. */
const MOST_SAMPLES = 20_000;

/** The numbers of a column as they were given, to judge its unit by. */
export type Samples = number[];

/** The values of a column in model units, one for each time; of a repeated time the last that is there. */
export function valuesOf(
	{ raw, role, spec }: Column,
	places: readonly (readonly number[])[],
	decimal: Decimal,
	tally: Tally,
	samples: Samples
): (number | null)[] {
	return places.map((each) => {
		let value: number | null = null;
		for (const place of each) {
			const read = rawNumber(raw[place] ?? null, role, spec.unit, decimal);
			if (read === 'other') tally.add('notNumbers', role, shown(raw[place]), null);
			else value = read ?? value;
		}
		if (value === null) return null;
		const scaled = value * (spec.scale ?? 1);
		if (samples.length < MOST_SAMPLES) samples.push(scaled);
		const si = toSi(role, spec.unit, scaled, 1);
		return Number.isFinite(si) ? si : null;
	});
}

/** True where the value grows with the length of its step. */
export function isRate(unit: string): boolean {
	return unit.endsWith('/h') && unit.startsWith('mm');
}

function shown(raw: unknown): string {
	return inQuotes(typeof raw === 'string' ? raw : (JSON.stringify(raw)?.slice(0, 60) ?? ''));
}
