import { expect, test } from 'vitest';
import { hindcast } from '#lib/model/hindcast.ts';
import { outlook } from '#lib/model/outlook.ts';
import { asked, hole, reading, record } from '../support/invented-winter.ts';

const FROST = Array.from({ length: 60 }, () => -10);

const FIRST = reading('2026-12-20', [0.1, 0.12]);
const SECOND = reading('2027-01-10', [0.3]);
const INPUT = asked(FROST, { readings: [SECOND, FIRST], asOf: '2027-01-20' });

test('each reading is told by day, with the mean of its holes and the days since the last', () => {
	expect(hindcast(INPUT)).toMatchObject([
		{ readingId: FIRST.id, on: '2026-12-20', daysSince: null },
		{ readingId: SECOND.id, on: '2027-01-10', measured_m: 0.3, daysSince: 21 }
	]);
	expect(hindcast(INPUT)[0]?.measured_m).toBeCloseTo(0.11, 9);
});

test('a reading is predicted from those before it, never from itself or a later one', () => {
	const [first, second] = hindcast(INPUT);
	const without = outlook({ ...INPUT, readings: [], asOf: '2026-12-20', until: '2026-12-20' });
	expect(first?.predicted).toEqual(without?.forecast.days.at(-1)?.total_m);
	const thicker = hindcast({
		...INPUT,
		readings: [reading(FIRST.on, [0.16]), SECOND]
	});
	expect(thicker[0]?.predicted).toEqual(first?.predicted);
	expect(thicker[1]?.predicted.p50).toBeGreaterThan(second?.predicted.p50 ?? Infinity);
});

test('two readings of one day do not help each other', () => {
	const twin = reading(SECOND.on, [0.2], { id: 'c' });
	const told = hindcast({ ...INPUT, readings: [FIRST, SECOND, twin] });
	expect(told[2]?.predicted).toEqual(told[1]?.predicted);
	expect(told.map(({ daysSince }) => daysSince)).toEqual([null, 21, 21]);
});

test('what was not drilled through on the open part is no test of the estimate', () => {
	const readings = [
		reading('2026-12-20', [0.1], { kind: 'atLeast' }),
		reading('2026-12-21', [], { kind: 'wentThrough' }),
		reading('2026-12-22', [0.1], { place: 'pressure ridge' }),
		reading('2026-12-23', [], { holes: [hole({ snow_m: 0.1 })] }),
		reading('2027-02-20', [0.4])
	];
	expect(hindcast({ ...INPUT, readings })).toEqual([]);
});

test('without a freeze-up nothing had been predicted', () => {
	expect(hindcast({ ...INPUT, record: record({ freezeUpOn: null }) })).toEqual([]);
});
