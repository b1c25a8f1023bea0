import { expect, test } from 'vitest';
import { brokeLately } from '#lib/model/broke-lately.ts';
import { hasBrokenSince } from '#lib/model/open-part.ts';
import { lastHoleOn } from '#lib/model/telling/reading-due.ts';
import type { SiteEvent } from '#lib/model/site-winter.ts';
import { trackWinter, type SiteRecord } from '#lib/model/tracks/track-winter.ts';
import type { Reading } from '#lib/model/reading.ts';
import { warmSpells } from '#lib/model/warm-spell.ts';
import { seasonDays } from '../../support/invented-winter.ts';
import { measuredReading } from '../../support/measured-reading.ts';

const PARENT_CLEARED: SiteEvent = { kind: 'cleared', on: '2026-12-20', snow_m: 0.05 };
const CLEARED: SiteEvent = { kind: 'cleared', on: '2027-01-10', snow_m: 0 };
const PACKED: SiteEvent = { kind: 'packed', on: '2027-01-20', density_kg_m3: null };

function siteRecord(
	events: SiteEvent[],
	readings: Reading[] = [],
	freezeUpOn: string | null = null
): SiteRecord {
	return {
		record: { winter: '2026-27', freezeUpOn, freezeUpBy: null, iceOutOn: null, events },
		readings
	};
}

function reading(id: string, on: string): Reading {
	return measuredReading(id, on, { total_m: 0.3, snow_m: 0.2 });
}

test('a track without any work is its parent’s ice, its own holes taken in', () => {
	const parent = siteRecord([PARENT_CLEARED], [reading('p', '2027-01-15')], '2026-12-01');
	const track = trackWinter(parent, siteRecord([], [reading('t', '2027-01-12')]));
	expect(track.record).toEqual(parent.record);
	expect(track.readings.map(({ id }) => id)).toEqual(['t', 'p']);
	expect(track.workedOn).toEqual([]);
});

test('from its first work on its own events and holes go on alone', () => {
	const later: SiteEvent = { kind: 'pumped', on: '2027-01-15', water_m: 0.1 };
	const parent = siteRecord(
		[PARENT_CLEARED, later],
		[reading('before', '2027-01-05'), reading('after', '2027-01-11')],
		'2026-12-01'
	);
	const own = siteRecord([CLEARED, PACKED], [reading('own', '2027-01-18')]);
	const track = trackWinter(parent, own);
	expect(track.record.freezeUpOn).toBe('2026-12-01');
	expect(track.record.events).toEqual([PARENT_CLEARED, CLEARED, PACKED]);
	expect(track.readings.map(({ id }) => id)).toEqual(['before', 'own']);
	expect(track.fromParent).toEqual(['before']);
	expect(track.workedOn).toEqual(['2027-01-10', '2027-01-20']);
});

test('a hole of the day of the first work tells the ice beside it and not the snow', () => {
	const parent = siteRecord([], [reading('p', '2027-01-10')], '2026-12-01');
	const [shared] = trackWinter(parent, siteRecord([CLEARED])).readings;
	expect(shared?.holes).toMatchObject([{ total_m: 0.3, snow_m: null }]);
	const again: SiteEvent = { ...CLEARED, on: '2027-01-03' };
	expect(trackWinter(parent, siteRecord([again, CLEARED])).readings).toEqual([]);
});

test('water that opens takes the track with it, which is its parent’s new ice after that', () => {
	const opened: SiteEvent = { kind: 'reopened', on: '2027-01-14', refrozeOn: '2027-01-16' };
	const readings = [reading('old', '2027-01-12'), reading('new', '2027-01-19')];
	const parent = siteRecord([opened], readings, '2026-12-01');
	const once = trackWinter(parent, siteRecord([CLEARED]));
	expect(once.record.events).toEqual([CLEARED, opened]);
	expect(once.readings.map(({ id }) => id)).toEqual(['new']);
	const worked = trackWinter(parent, siteRecord([CLEARED, { ...PACKED, on: '2027-01-17' }]));
	expect(worked.readings).toEqual([]);
});

test('work dated before freeze-up, or to open water, parts the track from nothing', () => {
	const thin = [reading('thin', '2027-01-19')];
	const early: SiteEvent = { ...CLEARED, on: '2026-11-20' };
	const track = trackWinter(siteRecord([], thin, '2026-12-01'), siteRecord([early]));
	expect(track.readings.map(({ id }) => id)).toEqual(['thin']);
	expect(track.workedOn).toEqual([]);
	const opened: SiteEvent = { kind: 'reopened', on: '2027-01-14', refrozeOn: '2027-01-16' };
	const wet = siteRecord([{ ...PACKED, on: '2027-01-15' }]);
	const again = trackWinter(siteRecord([opened], thin, '2026-12-01'), wet);
	expect(again.readings.map(({ id }) => id)).toEqual(['thin']);
});

test('a bad core beside a track that was worked on is known of it, and no hole of that reading', () => {
	const bad = { ...reading('bad', '2027-01-19'), core: 'candled' as const };
	const sound = { ...reading('sound', '2027-01-20'), core: 'sound' as const };
	const track = trackWinter(siteRecord([], [bad, sound], '2026-12-01'), siteRecord([CLEARED]));
	expect(track.readings).toEqual([{ ...bad, holes: [], secondHand: true }]);
	const days = seasonDays('2027-01-18', [{}, {}, {}]);
	expect(warmSpells(days, track.readings, () => false).at(-1)?.state).toBe('withheld');
	const own = { ...sound, id: 'own' };
	expect(warmSpells(days, [...track.readings, own], () => false).at(-1)?.state).toBe('none');
});

test('ice that broke beside a track that was worked on is told on it, and lends it no hole', () => {
	const broke: Reading = {
		...reading('broke', '2027-01-19'),
		kind: 'wentThrough',
		place: 'North point'
	};
	const parent = siteRecord([], [broke, reading('hole', '2027-01-20')], '2026-12-01');
	const own = reading('own', '2027-01-15');
	const track = trackWinter(parent, siteRecord([CLEARED], [own]));
	expect(track.readings).toEqual([own, { ...broke, holes: [], secondHand: true }]);
	expect(brokeLately(track.readings, '2027-01-20')).toEqual({
		on: '2027-01-19',
		place: 'North point'
	});
	// Nobody has drilled the track by it.
	expect(lastHoleOn(track.readings)).toBe('2027-01-15');
	const atPoint = { ...own, place: 'North point' };
	expect(hasBrokenSince(atPoint, track.readings, '2027-01-20')).toBe(true);
});
