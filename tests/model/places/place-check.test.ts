import { expect, test } from 'vitest';
import { addDays, isoDate, dayNumber } from '#lib/model/calendar.ts';
import { placeCheck } from '#lib/model/places/place-check.ts';
import { PLAIN_LASTS_d, SEASON_RULES } from '#lib/model/places/season-rule.ts';
import type { SiteFacts } from '#lib/model/places/site-facts.ts';
import { WEAK_SPOT_KINDS } from '#lib/model/places/weak-spot.ts';
import { hole, inventedReading } from '../../support/invented-view.ts';
import { weakSpot } from '../../support/invented-route.ts';

const TODAY = '2027-02-10';
const CALM: SiteFacts = {
	today: TODAY,
	bound_m: 0.4,
	lostSince_m: () => 0,
	hasThawedSince: () => false,
	gapDaysSince: () => 0
};

const ago = (days: number) => isoDate(dayNumber(TODAY) - days);
const at = (place: string, days: number, ...holes: ReturnType<typeof hole>[]) =>
	inventedReading({ id: `${place}-${days}`, place, on: ago(days), holes });
const clear = (clear_m: number) => hole({ clear_m, white_m: 0 });

test.each(WEAK_SPOT_KINDS)(
	'%s: holes count for as long as its rule says, and no longer',
	(kind) => {
		const spot = weakSpot(kind);
		const { lasts_d } = SEASON_RULES[kind];
		const on = (days: number) =>
			placeCheck({ name: spot.name, spot }, [at(spot.name, days, clear(0.3))], CALM);
		if (lasts_d === null) {
			expect(on(0).state).toBe('never');
			expect(on(0).holes).toBe(0);
			return;
		}
		expect(on(lasts_d)).toMatchObject({ state: 'counts', effective_m: 0.3, until: TODAY });
		expect(on(lasts_d + 1)).toMatchObject({ state: 'tooOld', holes: 0, until: null });
	}
);

// design 7: at a landing or a crack one day, at a ridge never, in the open no more than seven.
test('landings and cracks count a day, ridges never, the rest seven at most', () => {
	expect([SEASON_RULES.landing.lasts_d, SEASON_RULES.crack.lasts_d]).toEqual([1, 1]);
	expect(SEASON_RULES.pressureRidge.lasts_d).toBeNull();
	const all = Object.values(SEASON_RULES).map(({ lasts_d }) => lasts_d ?? 0);
	expect(Math.max(...all, PLAIN_LASTS_d)).toBe(7);
});

const BOG = weakSpot('bogOrWeeds', { name: 'Reeds' });
const bog = (readings: Parameters<typeof placeCheck>[1], facts: Partial<SiteFacts> = {}) =>
	placeCheck({ name: 'Reeds', spot: BOG }, readings, { ...CALM, ...facts });

test('the thinnest hole counts, of all days within the lifetime, never their mean', () => {
	const readings = [at('Reeds', 0, clear(0.4), clear(0.5)), at('reeds ', 6, clear(0.1))];
	expect(bog(readings)).toMatchObject({ state: 'counts', effective_m: 0.1, holes: 3 });
});

test('layers that were not told apart count half', () => {
	const check = bog([at('Reeds', 1, hole({ total_m: 0.4 }))]);
	expect(check).toMatchObject({ effective_m: 0.2, isHalved: true });
});

test('what the site has lost since is taken off, and what it gained is not put on', () => {
	expect(bog([at('Reeds', 3, clear(0.3))], { lostSince_m: () => 0.05 }).effective_m).toBeCloseTo(
		0.25
	);
	expect(bog([at('Reeds', 3, clear(0.3))]).effective_m).toBe(0.3);
});

test('a thaw or a day without a temperature since ends it', () => {
	const readings = [at('Reeds', 3, clear(0.3))];
	expect(bog(readings, { hasThawedSince: () => true }).state).toBe('thawed');
	expect(bog(readings, { gapDaysSince: () => 1 }).state).toBe('weatherUnknown');
});

test('where somebody went through nothing counts until a later hole', () => {
	const broke = inventedReading({
		id: 'b',
		place: 'Reeds',
		on: ago(2),
		kind: 'wentThrough',
		holes: []
	});
	expect(bog([at('Reeds', 2, clear(0.3)), broke]).state).toBe('broke');
	expect(bog([at('Reeds', 1, clear(0.3)), broke]).state).toBe('counts');
});

test('what somebody else told counts against and never for', () => {
	const told = { ...at('Reeds', 1, clear(0.08)), secondHand: true };
	expect(bog([told]).state).toBe('toldOnly');
	const both = bog([told, at('Reeds', 1, clear(0.3))]);
	expect(both).toMatchObject({ state: 'counts', effective_m: 0.08, holes: 1 });
});

test('a look without a hole is a check without a thickness', () => {
	const spot = { ...BOG, checkedOn: ago(1) };
	const check = placeCheck({ name: 'Reeds', spot }, [], CALM);
	expect(check).toMatchObject({ state: 'neverDrilled', lastOn: ago(1), effective_m: null });
});

test('readings of other places and of days to come are left alone', () => {
	expect(bog([at('Reedy bay', 0, clear(0.3))]).state).toBe('neverDrilled');
	const tomorrow = { ...at('Reeds', 0, clear(0.3)), on: addDays(TODAY, 1) };
	expect(bog([tomorrow]).state).toBe('neverDrilled');
});
