import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SeasonDay } from '#lib/model/season.ts';
import { warmSpells } from '#lib/model/warm-spell.ts';
import type { Reading } from '#lib/model/reading.ts';
import { column, reading, seasonDays } from '../support/invented-winter.ts';

const FROST: Partial<SeasonDay> = {};
const warmHours = (hours: number, air_degC = -1): Partial<SeasonDay> => ({
	air_degC,
	aboveFreezing_h: hours,
	freezing_degCd: 2,
	thawing_degCd: 1
});
const THAW: Partial<SeasonDay> = { ...warmHours(24, 3), freezing_degCd: 0, thawing_degCd: 3 };
const BARE: Partial<SeasonDay> = {
	sun_W_m2: 200,
	column: column({ clear_m: 0.3, snow_m: 0.02, snowDensity_kg_m3: 300 })
};

/** State on the last of these days from 10 January on, going by daily means. */
function last(days: Partial<SeasonDay>[], readings: Reading[] = [], hasHours = false) {
	const state = warmSpells(seasonDays('2027-01-10', days), readings, () => hasHours).at(-1);
	if (!state) throw new Error('no days');
	return state;
}

test('frost alone is no spell', () => {
	expect(last([FROST, FROST, FROST]).state).toBe('none');
});

test('six hours above freezing double the requirement that day and the next, five do not', () => {
	expect(last([FROST, warmHours(6)]).state).toBe('doubled');
	expect(last([FROST, warmHours(6), FROST]).state).toBe('doubled');
	expect(last([FROST, warmHours(5.9)]).state).toBe('none');
});

test('warm hours on both sides of midnight count together where only their number is known', () => {
	expect(last([warmHours(4), warmHours(4)], [], true).state).toBe('doubled');
	expect(last([warmHours(4), warmHours(4)], [], false).state).toBe('none');
	expect(last([warmHours(13), warmHours(12)], [], true).state).toBe('withheld');
});

test('24 hours above freezing withhold the status', () => {
	expect(last([FROST, THAW], [], true).state).toBe('withheld');
});

test('a daily mean above freezing withholds only where hours are not known', () => {
	expect(last([FROST, warmHours(13, 0.4)], [], false).state).toBe('withheld');
	expect(last([FROST, warmHours(13, 0.4)], [], true).state).toBe('doubled');
});

test('three days of hard frost without a hole do not end a spell', () => {
	const state = last([THAW, FROST, FROST, FROST, FROST, FROST]);
	expect(state.state).toBe('withheld');
	expect(state.frost_h).toBe(96);
});

test('three days of hard frost and a hole since the last warm day end it', () => {
	const days = [THAW, FROST, FROST, FROST, FROST];
	expect(last(days, [reading('2027-01-13', [0.3])]).state).toBe('none');
	expect(last(days.slice(0, 4), [reading('2027-01-13', [0.3])]).state).toBe('withheld');
});

test('a hole of the warm day itself does not end a spell', () => {
	const days = [THAW, FROST, FROST, FROST, FROST];
	expect(last(days, [reading('2027-01-10', [0.3])]).state).toBe('withheld');
});

test('frost that does not come to 15 °C·d does not end it', () => {
	const weak: Partial<SeasonDay> = { freezing_degCd: 4.9, air_degC: -4.9 };
	const holes = [reading('2027-01-13', [0.3])];
	expect(last([THAW, weak, weak, weak, FROST], holes).state).toBe('withheld');
	expect(last([THAW, weak, weak, weak, weak, FROST], holes).state).toBe('none');
});

test('a single mild hour starts the count of frost anew', () => {
	const days = [THAW, FROST, FROST, warmHours(1), FROST, FROST, FROST];
	expect(last(days, [reading('2027-01-12', [0.3])]).state).toBe('withheld');
	expect(last(days, [reading('2027-01-12', [0.3])]).lastWarmOn).toBe('2027-01-13');
});

test('a day without a temperature is no frost', () => {
	const gap: Partial<SeasonDay> = {
		source: 'gap',
		air_degC: null,
		aboveFreezing_h: null,
		freezing_degCd: 0
	};
	const holes = [reading('2027-01-14', [0.3])];
	expect(last([THAW, FROST, FROST, gap, FROST], holes).state).toBe('withheld');
});

test('once sun has been on bare ice only a core logged as sound ends it', () => {
	const days = [THAW, { ...FROST, ...BARE }, FROST, FROST, FROST];
	expect(last(days, [reading('2027-01-13', [0.3])]).state).toBe('withheld');
	expect(last(days, [reading('2027-01-13', [0.3], { core: 'sound' })]).state).toBe('none');
});

test('bare ice in the sun that only the last hole finds asks for a sound core as well', () => {
	const days = [THAW, FROST, FROST, FROST, { ...FROST, ...BARE }];
	const hole = reading('2027-01-14', [0.3]);
	expect(last(days, [hole]).state).toBe('withheld');
	expect(last(days, [{ ...hole, core: 'sound' }]).state).toBe('none');
});

test('snow of 3 cm or a low sun keeps the sun off', () => {
	const snowy = {
		sun_W_m2: 200,
		column: column({ clear_m: 0.3, snow_m: 0.03, snowDensity_kg_m3: 300 })
	};
	expect(last([THAW, snowy]).hadSunOnBareIce).toBe(false);
	expect(last([THAW, { ...BARE, sun_W_m2: 150 }]).hadSunOnBareIce).toBe(false);
	expect(last([THAW, BARE]).hadSunOnBareIce).toBe(true);
});

test('a candled or wet core withholds even in frost, until a sound one', () => {
	const bad = reading('2027-01-11', [0.3], { core: 'candled' });
	const sound = reading('2027-01-13', [0.3], { core: 'sound' });
	const plain = reading('2027-01-13', [0.3]);
	const days = [FROST, FROST, FROST, FROST];
	expect(last(days, [bad]).state).toBe('withheld');
	expect(last(days, [bad, plain]).state).toBe('withheld');
	expect(last(days, [bad, sound]).state).toBe('none');
});

test('a hole where the ice broke ends nothing', () => {
	const days = [THAW, FROST, FROST, FROST, FROST];
	const broke = reading('2027-01-13', [0.3], { kind: 'wentThrough' });
	expect(last(days, [broke]).state).toBe('withheld');
	const bad = reading('2027-01-11', [0.3], { core: 'candled' });
	const sound = reading('2027-01-13', [], { kind: 'wentThrough', core: 'sound' });
	expect(last([FROST, FROST, FROST, FROST], [bad, sound]).state).toBe('withheld');
});

test('a tool that stuck ends nothing, unless its core was sound', () => {
	const days = [THAW, FROST, FROST, FROST, FROST];
	const stuck = reading('2027-01-13', [0.05], { kind: 'atLeast' });
	expect(last(days, [stuck]).state).toBe('withheld');
	expect(last(days, [{ ...stuck, core: 'sound' }]).state).toBe('none');
});

test('frost that was only forecast ends no spell, warmth that was begins one', () => {
	const ahead = (day: Partial<SeasonDay>) => ({ ...day, source: 'forecast' as const });
	const hole = reading('2027-01-14', [0.3], { core: 'sound' });
	const frost = [FROST, FROST, FROST, FROST];
	expect(last([THAW, ...frost], [hole]).state).toBe('none');
	expect(last([THAW, ...frost.map(ahead)], [hole]).state).toBe('withheld');
	expect(last([THAW, FROST, ahead(FROST), FROST, FROST], [hole]).frost_h).toBe(24);
	expect(last([FROST, ahead(THAW)]).state).toBe('withheld');
});

test('warmth before there is a sheet leaves no mark on it', () => {
	const open: Partial<SeasonDay> = { column: column() };
	expect(last([{ ...THAW, ...open }, { ...FROST, ...open }, FROST]).state).toBe('none');
});

test('an estimate of no ice late in the winter does not end a spell', () => {
	const open: Partial<SeasonDay> = { column: column() };
	expect(last([FROST, THAW, open, open, FROST]).state).toBe('withheld');
});

test('warmth after enough frost is told as a spell of its own', () => {
	const state = last([THAW, FROST, FROST, FROST, FROST, warmHours(7)]);
	expect(state).toMatchObject({ state: 'withheld', since: '2027-01-15', frost_h: 0 });
});

test('more warmth never lightens what is in force', () => {
	const order = { none: 0, doubled: 1, withheld: 2 };
	const hours = fc.array(fc.integer({ min: 0, max: 24 }), { minLength: 2, maxLength: 12 });
	fc.assert(
		fc.property(hours, fc.nat(11), fc.boolean(), (each, at, hasHours) => {
			const index = at % each.length;
			const warmer = each.map((h, i) => (i === index ? Math.min(24, h + 6) : h));
			const before = last(
				each.map((h) => warmHours(h, (h - 12) / 4)),
				[],
				hasHours
			);
			const after = last(
				warmer.map((h) => warmHours(h, (h - 12) / 4)),
				[],
				hasHours
			);
			expect(order[after.state]).toBeGreaterThanOrEqual(order[before.state]);
		})
	);
});
