import { expect, test } from 'vitest';
import { hindcast } from '#lib/model/ensemble/hindcast.ts';
import { outlook } from '#lib/model/outlook.ts';
import { asked, hole, reading, record } from '../../support/invented-winter.ts';

const FROST = Array.from({ length: 60 }, () => -10);
const first = reading('2026-12-20', [0.15]);
const second = reading('2027-01-10', [0.25, 0.25]);

test('each reading stands beside what was told before it was taken in', () => {
	const told = hindcast(asked(FROST, { readings: [first, second] }));
	expect(told).toMatchObject([
		{ readingId: first.id, on: '2026-12-20', daysSince: null, measured_m: 0.15 },
		{ readingId: second.id, on: '2027-01-10', daysSince: 21, measured_m: 0.25 }
	]);
	const alone = hindcast(asked(FROST, { readings: [second] }));
	expect(told[1]?.predicted.p50).toBeLessThan(alone[0]?.predicted.p50 ?? 0);
});

test('the prediction is the forecast of the day as it was without the reading', () => {
	const [told] = hindcast(asked(FROST, { readings: [second] }));
	const plain = outlook(asked(FROST))?.forecast.days.find((day) => day.on === second.on);
	expect(told?.predicted).toEqual(plain?.total_m);
});

test('it is not moved by later readings, nor by the order they are given in', () => {
	const alone = hindcast(asked(FROST, { readings: [first] }));
	const both = hindcast(asked(FROST, { readings: [second, first] }));
	expect(both[0]).toEqual(alone[0]);
	expect(both.map(({ on }) => on)).toEqual([first.on, second.on]);
});

test('readings of one day are told against the same estimate', () => {
	const other = reading('2026-12-20', [0.3], { id: 'other', place: 'far end' });
	const [a, b] = hindcast(asked(FROST, { readings: [first, other] }));
	expect(a?.predicted).toEqual(b?.predicted);
	expect([a?.daysSince, b?.daysSince]).toEqual([null, null]);
});

test('what told no thickness of the site is left out', () => {
	const readings = [
		reading('2026-12-20', [], { id: 'snow', holes: [hole({ snow_m: 0.1 })] }),
		reading('2026-12-22', [0.1], { id: 'broke', kind: 'wentThrough' }),
		reading('2026-12-24', [0.1], { id: 'least', kind: 'atLeast' }),
		reading('2026-12-26', [0.1], { id: 'ridge', place: 'pressure ridge' }),
		reading('2027-02-20', [0.4], { id: 'later' })
	];
	expect(hindcast(asked(FROST, { readings }))).toEqual([]);
	expect(hindcast(asked(FROST, { record: record({ freezeUpOn: null }) }))).toEqual([]);
});
