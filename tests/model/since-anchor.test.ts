import { expect, test } from 'vitest';
import type { SeasonDay } from '#lib/model/season.ts';
import { sinceAnchor } from '#lib/model/since-anchor.ts';
import { column, hole, reading, seasonDays } from '../support/invented-winter.ts';

const thick = (clear_m: number): Partial<SeasonDay> => ({ column: column({ clear_m }) });
const gap: Partial<SeasonDay> = { source: 'gap', air_degC: null, aboveFreezing_h: null };

test('growth and melt add up from freeze-up on', () => {
	const days = seasonDays('2027-01-01', [thick(0), thick(0.05), thick(0.04), thick(0.06)]);
	const account = sinceAnchor(days, []).at(-1);
	expect(account?.anchored_m).toBeNull();
	expect(account?.grown_m).toBeCloseTo(0.07, 9);
	expect(account?.melted_m).toBeCloseTo(0.01, 9);
});

test('a hole begins a new account', () => {
	const read = reading('2027-01-03', [0.2]);
	const days = seasonDays('2027-01-01', [
		thick(0.1),
		thick(0.12),
		{ ...thick(0.2), anchoredBy: [read.id] },
		thick(0.22)
	]);
	expect(sinceAnchor(days, [read]).at(-1)).toMatchObject({
		anchored_m: 0.2,
		read_d: 1,
		layersRead: true
	});
	expect(sinceAnchor(days, [read]).at(-1)?.grown_m).toBeCloseTo(0.02, 9);
});

test('a reading of snow alone does not anchor the thickness', () => {
	const snow = reading('2027-01-02', [], { holes: [hole({ snow_m: 0.1 })] });
	const days = seasonDays('2027-01-01', [thick(0.1), { ...thick(0.12), anchoredBy: [snow.id] }]);
	expect(sinceAnchor(days, [snow]).at(-1)?.anchored_m).toBeNull();
});

test('a passed day without a temperature counts once it has passed, for more when it may have melted', () => {
	const days = seasonDays('2027-01-01', [thick(0.1), { ...gap, ...thick(0.1) }, thick(0.1)]);
	const spring = days.map((day) => ({ ...day, sun_W_m2: 250 }));
	expect(sinceAnchor(days, []).map((account) => account.gapDays)).toEqual([0, 0, 1]);
	expect(sinceAnchor(spring, []).at(-1)?.gaps_m).toBeGreaterThan(
		sinceAnchor(days, []).at(-1)?.gaps_m ?? Infinity
	);
});
