import { expect, test } from 'vitest';
import { changeSentences, type ShownChange } from '../../src/lib/ui/history/change-words.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const told = (...changes: ShownChange[]) => changeSentences(changes, METRIC);

const READING = {
	id: 'r-1',
	site_id: 'main',
	day: '2027-01-10',
	place: 'the reef',
	deleted_at: null
};
const hole = (side: 'before' | 'after', total_m: number, position = 0): ShownChange => ({
	what: 'hole',
	key: { reading_id: 'r-1', position },
	before: null,
	after: null,
	[side]: { reading_id: 'r-1', position, total_m, snow_m: null }
});
const reading = (before: object | null, after: object | null): ShownChange => ({
	what: 'reading',
	key: { id: 'r-1' },
	before: before && { ...READING, ...before },
	after: after && { ...READING, ...after }
});

test('a reading is told with its holes', () => {
	expect(told(reading(null, {}), hole('after', 0.3), hole('after', 0.27, 1))).toEqual([
		'Logged the reading of 10 Jan 2027 at the reef: 2 holes (whole ice 30 cm; whole ice 27 cm).'
	]);
});

test('deleted and brought back', () => {
	const deleted = { deleted_at: '2027-02-01T00:00:00Z' };
	expect(told(reading({}, deleted))).toEqual(['Deleted the reading of 10 Jan 2027 at the reef.']);
	expect(told(reading(deleted, {}))).toEqual([
		'Brought back the reading of 10 Jan 2027 at the reef.'
	]);
});

test('a change names what was and what is, unchanged holes left out', () => {
	const same = [hole('before', 0.3), hole('after', 0.3)];
	expect(told(reading({ place: null }, {}), ...same)).toEqual([
		'Changed the reading of 10 Jan 2027 at the reef: place from nothing to “the reef”.'
	]);
	expect(told(...same)).toEqual(['Stored again, unchanged.']);
	expect(told(hole('before', 0.3), hole('after', 0.2))).toEqual([
		'1 hole (whole ice 20 cm) in place of whole ice 30 cm.'
	]);
});

test('numbers come in the unit of the reader', () => {
	const change = { what: 'lake', key: { id: 'pond' } };
	const before = { name: 'Pond', area_km2: 2, elevation_m: null, freeze_up_on: '2026-12-01' };
	const after = { name: 'Pond', area_km2: 3, elevation_m: 210, freeze_up_on: '2026-12-03' };
	expect(told({ ...change, before, after })).toEqual([
		'Changed the lake “Pond”: area from 2 km² to 3 km²; elevation from nothing to 210 m; freeze-up from 1 Dec 2026 to 3 Dec 2026.'
	]);
});

test('a file is one sentence', () => {
	const after = { days: 60, hours: 0, from: '2026-12-01', to: '2027-01-29' };
	expect(told({ what: 'weather', key: {}, before: null, after })).toEqual([
		'Took in weather from a file: 60 days, 1 Dec 2026 to 29 Jan 2027.'
	]);
});
