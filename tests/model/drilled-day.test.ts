import { expect, test } from 'vitest';
import { drilledDays, type DrilledDayInput } from '#lib/model/drilled-day.ts';
import { warmSpells } from '#lib/model/warm-spell.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { SeasonDay } from '#lib/model/season.ts';
import { column, hole, reading, seasonDays } from '../support/invented-winter.ts';

const thick = (clear_m: number): Partial<SeasonDay> => ({ column: column({ clear_m }) });

function drilled(
	readings: Reading[],
	days: Partial<SeasonDay>[],
	change: Partial<DrilledDayInput> = {}
) {
	const season = seasonDays('2027-01-10', days).map((day) => ({
		...day,
		anchoredBy: readings.filter((each) => each.on === day.on).map((each) => each.id)
	}));
	return drilledDays({
		asOf: season.at(-1)?.on ?? '',
		readings,
		doubtful: new Set(),
		warm: warmSpells(season, readings, () => true),
		since: null,
		lookBack_d: 21,
		seasonBy: () => season,
		...change
	});
}

test('a hole gains what the site has gained since, and loses what it has lost', () => {
	const read = reading('2027-01-10', [0.28, 0.32]);
	const grown = drilled([read], [thick(0.3), thick(0.32)])[0]?.holes.map(
		(each) => each.effective_m
	);
	expect(grown?.[0]).toBeCloseTo(0.3, 9);
	expect(grown?.[1]).toBeCloseTo(0.34, 9);
	const melted = drilled([read], [thick(0.3), thick(0.01)])[0]?.holes[0]?.effective_m;
	expect(melted).toBe(0);
});

test('holes of several readings of one day count together', () => {
	const here = reading('2027-01-10', [0.3]);
	const there = reading('2027-01-10', [0.31, 0.3], { id: 'there', place: 'narrow bay' });
	expect(drilled([here, there], [thick(0.3)])[0]?.holes).toHaveLength(3);
});

test('a place where the ice broke that day or later supports nothing', () => {
	const read = reading('2027-01-10', [0.3, 0.3, 0.3], { place: 'Narrow bay' });
	const broke = reading('2027-01-11', [], {
		id: 'broke',
		kind: 'wentThrough',
		place: 'narrow bay '
	});
	const elsewhere = { ...broke, place: 'inlet' };
	expect(drilled([read, broke], [thick(0.3), thick(0.3)])).toHaveLength(0);
	expect(drilled([read, elsewhere], [thick(0.3), thick(0.3)])).toHaveLength(1);
});

test('holes in ice that has gone since support nothing, those in the new ice do', () => {
	const old = reading('2027-01-10', [0.3, 0.3, 0.3]);
	const own = reading('2027-01-12', [0.1, 0.1, 0.1], { id: 'new' });
	const days = [thick(0.3), thick(0), thick(0.1), thick(0.15)];
	expect(drilled([old], days)).toHaveLength(0);
	expect(drilled([old, own], days).map(({ on }) => on)).toEqual(['2027-01-12']);
});

test('days since a hole that were only forecast count as unseen, once they are more than one', () => {
	const read = reading('2027-01-12', [0.3]);
	const ahead = { ...thick(0.3), source: 'forecast' as const };
	const gaps = (...days: Partial<SeasonDay>[]) => drilled([read], days)[0]?.gapDays;
	const seen = thick(0.3);
	expect(gaps(ahead, ahead, seen, ahead, ahead)).toBe(0);
	expect(gaps(seen, seen, seen, ahead, ahead, ahead, ahead)).toBe(2);
});

test('a reading that is set aside supports nothing', () => {
	const read = reading('2027-01-10', [2, 2, 2]);
	expect(drilled([read], [thick(0.3)], { doubtful: new Set([read.id]) })).toHaveLength(0);
});

test('flooding after the hole and warm hours from its day on are told', () => {
	const read = reading('2027-01-10', [0.3]);
	const wet = { column: column({ clear_m: 0.3, slush_m: 0.05 }) };
	expect(drilled([read], [thick(0.3), wet])[0]?.hasFlooded).toBe(true);
	expect(drilled([read], [wet, thick(0.3)])[0]?.hasFlooded).toBe(false);
	const white = { column: column({ clear_m: 0.3, white_m: 0.02 }) };
	expect(drilled([read], [thick(0.3), white])[0]?.hasFlooded).toBe(true);
	expect(drilled([read], [white, white])[0]?.hasFlooded).toBe(false);
	expect(drilled([read], [{ ...thick(0.3), aboveFreezing_h: 1 }, thick(0.3)])[0]?.hasThawed).toBe(
		true
	);
});

test('slush or water over the ice that a later hole found is a flood', () => {
	const read = reading('2027-01-10', [0.3]);
	const found = (layer: Parameters<typeof hole>[0], on = '2027-01-12') =>
		drilled(
			[read, reading(on, [], { id: 'later', holes: [hole(layer)] })],
			[thick(0.3), thick(0.3), thick(0.3)]
		).at(-1)?.hasFlooded;
	expect(found({ slush_m: 0.04 })).toBe(true);
	expect(found({ freeboard_m: -0.01 })).toBe(true);
	expect(found({ snow_m: 0.04, slush_m: 0, freeboard_m: 0.02 })).toBe(false);
	expect(found({ slush_m: 0.04 }, '2027-01-10')).toBe(false);
});

test('a spell that another hole has ended still ends the earlier ones', () => {
	const early = reading('2027-01-10', [0.3, 0.3, 0.3]);
	const late = reading('2027-01-15', [0.3], { id: 'late' });
	const warm = { ...thick(0.3), aboveFreezing_h: 7, air_degC: -1 };
	const days = [thick(0.3), warm, ...Array.from({ length: 4 }, () => thick(0.3))];
	const [first, second] = drilled([early, late], days);
	expect(first).toMatchObject({ on: '2027-01-15', hadSpell: false });
	expect(second).toMatchObject({ on: '2027-01-10', hadSpell: true });
});

test('a spell that has ended counts in the next one too', () => {
	const early = reading('2027-01-10', [0.3, 0.3, 0.3]);
	const late = reading('2027-01-15', [0.3], { id: 'late' });
	const warm = { ...thick(0.3), aboveFreezing_h: 7, air_degC: -1 };
	const frost = Array.from({ length: 4 }, () => thick(0.3));
	const [newer, older] = drilled([early, late], [thick(0.3), warm, ...frost, warm]);
	expect(newer).toMatchObject({ on: '2027-01-15', hadSpell: false });
	expect(older).toMatchObject({ on: '2027-01-10', hadSpell: true });
	expect(drilled([early], [thick(0.3), warm, ...frost, warm])[0]?.hadSpell).toBe(false);
});

test('of older days only the latest is looked at', () => {
	const read = reading('2027-01-10', [0.3]);
	const days = Array.from({ length: 40 }, () => thick(0.3));
	expect(drilled([read], days).map((day) => day.age_d)).toEqual([39]);
	const later = reading('2027-02-10', [0.3]);
	expect(drilled([read, later], days).map((day) => day.on)).toEqual(['2027-02-10']);
});
