import { expect, test } from 'vitest';
import { openMembers } from '#lib/model/ensemble/members.ts';
import { drawPaces } from '#lib/model/ensemble/pace.ts';
import { normalDraws, seededRandom } from '#lib/model/ensemble/random.ts';
import { recalibrate } from '#lib/model/ensemble/recalibrate.ts';
import { drawTraits } from '#lib/model/ensemble/traits.ts';
import type { Reading } from '#lib/model/reading.ts';
import { correlation, mean, median, spread } from '../../support/invented-ensemble.ts';
import { hole, reading } from '../../support/invented-winter.ts';

const COUNT = 1000;
const ON = '2027-01-10';

/** Members at 30 ± 3 cm, a fifth of it white, under 10 ± 3 cm of snow. */
function ensemble() {
	const random = seededRandom(17);
	const members = openMembers(COUNT);
	const ice = normalDraws(COUNT, random);
	const share = normalDraws(COUNT, random);
	const snow = normalDraws(COUNT, random);
	for (let i = 0; i < COUNT; i++) {
		const total_m = 0.3 + 0.03 * (ice[i] ?? 0);
		const white = 0.2 + 0.05 * (share[i] ?? 0);
		members.white_m[i] = white * total_m;
		members.clear_m[i] = total_m - (members.white_m[i] ?? 0);
		members.snow_m[i] = 0.1 + 0.03 * (snow[i] ?? 0);
		members.snowDensity_kg_m3[i] = 250;
	}
	return { members, traits: drawTraits(COUNT, random), paces: drawPaces(COUNT, random) };
}

type State = ReturnType<typeof ensemble>;

const totals = ({ members }: State) =>
	members.clear_m.map((clear_m, i) => clear_m + (members.white_m[i] ?? 0));

function taken(said: Reading, state = ensemble(), daysSinceLast = 10) {
	const did = recalibrate(said, daysSinceLast, state, seededRandom(23));
	return { state, did };
}

/** A thickness alone, of one hole. */
const thickness = (total_m: number) => reading(ON, [], { holes: [hole({ total_m })] });

const middle = (state: State) => median(totals(state));
const BEFORE = ensemble();

test('a reading pulls the members towards it and leaves less doubt', () => {
	const { state, did } = taken(thickness(0.34));
	expect(middle(state)).toBeGreaterThan(0.31);
	expect(middle(state)).toBeLessThan(0.34);
	expect(spread(totals(state))).toBeLessThan(spread(totals(BEFORE)));
	expect(did).toMatchObject({ readingId: `read-${ON}`, isAskedAbout: false });
	expect(did.off).toBeGreaterThan(0.5);
});

test('a thinner and an equally thicker reading move the median alike', () => {
	for (const away_m of [0.01, 0.04]) {
		const up_m = middle(taken(thickness(0.3 + away_m)).state) - 0.3;
		const down_m = 0.3 - middle(taken(thickness(0.3 - away_m)).state);
		expect(Math.abs(up_m - down_m)).toBeLessThan(0.003);
		expect(up_m).toBeGreaterThan(0.3 * away_m);
		expect(down_m).toBeGreaterThan(0.3 * away_m);
	}
});

test('2.00 m typed for a sheet of 0.30 m moves it by less than a centimetre and is asked about', () => {
	const { state, did } = taken(thickness(2));
	expect(Math.abs(middle(state) - middle(BEFORE))).toBeLessThan(0.01);
	expect(did.isAskedAbout).toBe(true);
	expect(did.off).toBeGreaterThan(4);
});

test('3 cm on a sheet taken for 30 is asked about as well, and believed until it is mended', () => {
	const { state, did } = taken(thickness(0.03));
	expect(did.isAskedAbout).toBe(true);
	expect(middle(state)).toBeLessThan(0.16);
});

test('several holes of a place count more than one', () => {
	const one = taken(thickness(0.36)).state;
	const holes = Array.from({ length: 5 }, () => hole({ total_m: 0.36 }));
	const five = taken(reading(ON, [], { holes })).state;
	expect(middle(five)).toBeGreaterThan(middle(one) + 0.001);
	expect(spread(totals(five))).toBeLessThan(spread(totals(one)));
});

test('the longer since the last reading, the more this one counts', () => {
	const soon = taken(thickness(0.36), ensemble(), 1).state;
	const late = taken(thickness(0.36), ensemble(), 30).state;
	expect(middle(late)).toBeGreaterThan(middle(soon) + 0.003);
});

test('"went through" moves nothing', () => {
	const { state, did } = taken({ ...thickness(0.02), kind: 'wentThrough' });
	expect(state.members).toEqual(BEFORE.members);
	expect(state.traits).toEqual(BEFORE.traits);
	expect(did).toEqual({ readingId: `read-${ON}`, off: null, isAskedAbout: false });
});

test('"at least" below the estimate leaves it, above it raises it', () => {
	const met = taken({ ...thickness(0.2), kind: 'atLeast' }).state;
	expect(met.members).toEqual(BEFORE.members);
	expect(met.traits).toEqual(BEFORE.traits);
	const raised = taken({ ...thickness(0.36), kind: 'atLeast' }).state;
	expect(middle(raised)).toBeGreaterThan(0.31);
});

test('layers told apart shift ice from clear to white and leave the whole as the total has it', () => {
	const whole = taken(thickness(0.3)).state;
	const layers = taken(reading(ON, [], { holes: [hole({ clear_m: 0.15, white_m: 0.15 })] })).state;
	const share = ({ members }: State) => mean(members.white_m) / mean(members.clear_m);
	expect(middle(layers)).toBeCloseTo(middle(whole), 6);
	expect(share(layers)).toBeGreaterThan(share(whole));
});

test('snow and water level move the snow and nothing of the ice', () => {
	const deep = taken(reading(ON, [], { holes: [hole({ snow_m: 0.2 })] })).state;
	expect(mean(deep.members.snow_m)).toBeGreaterThan(0.11);
	const flooded = taken(reading(ON, [], { holes: [hole({ freeboard_m: -0.03 })] })).state;
	expect(mean(flooded.members.snow_m)).toBeGreaterThan(0.11);
	for (const { members, traits } of [deep, flooded]) {
		expect(members.clear_m).toEqual(BEFORE.members.clear_m);
		expect(traits).toEqual(BEFORE.traits);
	}
});

test('parameters follow with care: less than the state, and only those that have to do with it', () => {
	const state = ensemble();
	const total = totals(state);
	// A site trait that this winter's thickness hangs on.
	state.traits.site[0] = total.map((total_m) => (total_m - 0.3) / 0.03);
	taken(thickness(0.36), state);
	const moved = mean(state.traits.site[0] ?? new Float64Array());
	const stateMoved = (middle(state) - 0.3) / 0.03;
	expect(moved).toBeGreaterThan(0.05);
	expect(moved).toBeLessThan(0.3 * stateMoved);
	expect(Math.abs(mean(state.traits.site[5] ?? new Float64Array()))).toBeLessThan(0.05);
	expect(correlation(state.traits.site[0] ?? [], totals(state))).toBeGreaterThan(0);
});

test('readings of next to nothing, and of ice nobody expects, leave ice that can be', () => {
	for (const said of [thickness(0), thickness(0.6)]) {
		const state = ensemble();
		state.members.clear_m.fill(0, 0, 300);
		state.members.white_m.fill(0, 0, 300);
		taken(said, state);
		for (const values of Object.values(state.members)) {
			if (typeof values === 'number') continue;
			expect(values.every((value: number) => value >= 0)).toBe(true);
		}
		expect(state.members.liquidFraction.every((value) => value <= 1)).toBe(true);
	}
});
