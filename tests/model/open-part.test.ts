import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { outlook } from '#lib/model/outlook.ts';
import { readingsEffect } from '#lib/model/readings-effect.ts';
import type { Reading } from '#lib/model/reading.ts';
import { ROTTEN } from '#lib/model/rotten.ts';
import { asked, reading, weather } from '../support/invented-winter.ts';

/** Frost, three warm days and five days of hard frost again. */
const SPELL = [...Array.from({ length: 50 }, () => -9), 4, 4, 4, -9, -9, -9, -9, -9];
const LAST = addDays('2026-12-01', SPELL.length - 1);

function spell(change: Partial<Reading>, weakSpots: string[] = []) {
	const holes = reading(LAST, [0.3, 0.3, 0.3, 0.3, 0.3], change);
	const past = weather('2025-12-01', SPELL);
	const told = outlook(
		asked(SPELL, { readings: [holes], weakSpots, past, until: addDays(LAST, 1) })
	);
	return {
		state: told?.warmSpell.state,
		pThaw: told?.forecast.loads[0]?.days.find(({ on }) => on === LAST)?.pThaw,
		statuses: new Set(told?.forecast.loads.map(({ status }) => status))
	};
}

test('a hole on the open part ends a warm spell, one at a weak spot does not', () => {
	expect(spell({}).state).toBe('none');
	expect(spell({ place: null }).state).toBe('none');
	const atSpot = spell({ place: 'Inlet ' }, ['inlet']);
	expect(atSpot.state).toBe('withheld');
	expect(atSpot.pThaw).toBe(1);
	expect(atSpot.statuses).not.toContain('reached');
	expect(atSpot.statuses).not.toContain('expectedNotDrilled');
});

test.each(['the landing', 'pressure ridge', 'crack'])(
	'a hole at %s ends no warm spell',
	(place) => {
		expect(spell({ place }).state).toBe('withheld');
	}
);

test('a hole far above all that was expected ends no warm spell', () => {
	const holes = [2, 2, 2].map((total_m) => ({
		...reading(LAST, [2]).holes[0]!,
		total_m,
		clear_m: 2
	}));
	expect(spell({ holes }).state).toBe('withheld');
});

test('a sound core at a weak spot lifts neither a bad core nor rot, a bad one there withholds', () => {
	const bad = reading('2027-01-11', [0.3], { core: 'wet', id: 'bad' });
	const frost = Array.from({ length: 43 }, () => -9);
	const told = (core: 'sound' | 'wet', place: string, readings: Reading[]) => {
		const next = reading('2027-01-12', [0.3], { core, place, id: 'next' });
		const answer = outlook(asked(frost, { readings: [...readings, next], weakSpots: ['inlet'] }));
		const rot = answer?.today?.column.liquidFraction ?? Number.NaN;
		return { spell: answer?.warmSpell.state, isRotten: rot >= ROTTEN };
	};
	const lifted = { spell: 'none', isRotten: false };
	const held = { spell: 'withheld', isRotten: true };
	expect(told('sound', 'bay', [bad])).toEqual(lifted);
	expect(told('sound', 'inlet', [bad])).toEqual(held);
	expect(told('wet', 'inlet', [])).toEqual(held);
});

test('holes that wait on a phone are known to be at a weak spot too', () => {
	const input = asked(
		Array.from({ length: 50 }, () => -9),
		{ weakSpots: ['inlet'] }
	);
	const after = (place: string) => {
		const more = [reading(input.asOf, [0.4, 0.4, 0.4, 0.4, 0.4], { place })];
		return readingsEffect(input, more)?.loads.map((load) => load.after);
	};
	expect(after('bay')).toContain('reached');
	expect(after('Inlet')).not.toContain('reached');
});
