import { expect, test } from 'vitest';
import type { SeasonDay } from '#lib/model/season.ts';
import { sinceAnchor } from '#lib/model/since-anchor.ts';
import { column, hole, reading, seasonDays } from '../support/invented-winter.ts';

const thick = (clear_m: number): Partial<SeasonDay> => ({ column: column({ clear_m }) });
const gap: Partial<SeasonDay> = { source: 'gap', air_degC: null, aboveFreezing_h: null };

test('a passed day without a temperature counts once it has passed, for more when it may have melted', () => {
	const days = seasonDays('2027-01-01', [thick(0.1), { ...gap, ...thick(0.1) }, thick(0.1)]);
	const spring = days.map((day) => ({ ...day, sun_W_m2: 250 }));
	expect(sinceAnchor(days, []).map((account) => account.gapDays)).toEqual([0, 0, 1]);
	expect(sinceAnchor(spring, []).at(-1)?.gaps_m).toBeGreaterThan(
		sinceAnchor(days, []).at(-1)?.gaps_m ?? Infinity
	);
});

test('a hole begins a new account, a depth of snow alone does not', () => {
	const read = reading('2027-01-03', [0.2]);
	const snow = reading('2027-01-03', [], { id: 'snow', holes: [hole({ snow_m: 0.1 })] });
	const gaps = (id: string) =>
		sinceAnchor(seasonDays('2027-01-01', [gap, {}, { anchoredBy: [id] }, {}]), [read, snow]).map(
			(account) => account.gapDays
		);
	expect(gaps(read.id)).toEqual([0, 1, 0, 0]);
	expect(gaps(snow.id)).toEqual([0, 1, 1, 1]);
});
