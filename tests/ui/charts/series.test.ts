import { expect, test } from 'vitest';
import { readingPoints } from '#lib/ui/charts/reading-points.ts';
import { knownDays, weekly } from '#lib/ui/charts/series.ts';
import { readingsTable, thicknessTable, weatherTable } from '#lib/ui/charts/series-tables.ts';
import { hole, inventedForecast, inventedReading } from '../../support/invented-view.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

test('days past the known weather are left out', () => {
	const { days } = inventedForecast();
	const known = knownDays(days);
	expect(days.filter(({ source }) => source === 'gap')).toHaveLength(4);
	expect(known).toHaveLength(days.length - 4);
	expect(known.at(-1)?.on).toBe('2027-02-10');
});

test('a gap with an estimate stays in', () => {
	const [, day] = inventedForecast().days;
	expect(day && knownDays([{ ...day, source: 'gap' }])).toHaveLength(1);
});

test('the lower bounds are those to go by, and no number is rounded up', () => {
	const [day] = inventedForecast().days.slice(60, 61);
	if (!day) throw new Error('no such day');
	const total_m = { ...day.total_m, p50: 0.23996 };
	const bound = { total_m: 0.17999, effective_m: 0.12999 };
	const [known] = knownDays([{ ...day, total_m, bound }]);
	expect(known).toMatchObject({
		total_m: 0.2399,
		totalLower_m: 0.1799,
		effectiveLower_m: 0.1299
	});
	expect(known?.totalLower_m).toBeLessThan(day.total_m.p10 ?? 0);
});

test('weeks are counted back from the last day', () => {
	expect(weekly([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])).toEqual([3, 10]);
	expect(weekly([])).toEqual([]);
});

test('a reading is shown by its mean and its holes', () => {
	const [point] = readingPoints([inventedReading()], '2027-02-10');
	expect(point?.holes_m).toEqual([0.13, 0.14, 0.145]);
	expect(point?.mean_m).toBeCloseTo(0.1383, 4);
});

test('a hole with only one of its layers measured has no thickness', () => {
	const reading = inventedReading({ holes: [hole({ clear_m: 0.2 })] });
	expect(readingPoints([reading], '2027-02-10')).toEqual([]);
});

test('ice that broke is shown even where nobody measured it', () => {
	const reading = inventedReading({ kind: 'wentThrough', holes: [] });
	expect(readingPoints([reading], '2027-02-10')).toMatchObject([{ mean_m: 0, holes_m: [] }]);
});

test('a reading after the day asked for is not shown', () => {
	expect(readingPoints([inventedReading()], '2026-12-19')).toEqual([]);
});

test('the tables say what the pictures show, week by week', () => {
	const days = knownDays(inventedForecast().days);
	const table = thicknessTable(days, METRIC);
	expect(table.rows).toHaveLength(11);
	expect(table.rows.at(-1)?.cells).toEqual([
		'10 Feb 2027',
		'41 cm',
		'31 cm',
		'32 cm',
		'8 cm',
		'27 cm'
	]);
	for (const { cells } of [...table.rows, ...weatherTable(days, METRIC).rows]) {
		expect(cells.join()).not.toMatch(/NaN|null|undefined/);
	}
});

test('the air in the table is that of the last day whose weather is in the state', () => {
	const days = knownDays(inventedForecast().days);
	const [first] = weatherTable(days.slice(0, 1), METRIC).rows;
	expect(first?.cells[1]).toBe('not known');
	expect(weatherTable(days.slice(0, 8), METRIC).rows.at(-1)?.cells[1]).toBe('−1 °C');
});

test('each kind of reading is told apart in words', () => {
	const readings = readingPoints(
		[
			inventedReading(),
			inventedReading({ kind: 'atLeast', holes: [hole({ total_m: 0.3 })] }),
			inventedReading({ kind: 'wentThrough', holes: [], place: null })
		],
		'2027-02-10'
	);
	expect(readingsTable(readings, METRIC).rows.map(({ cells }) => cells.slice(1))).toEqual([
		['narrow bay', '13 cm, 14 cm, 14 cm'],
		['narrow bay', 'at least 30 cm, not drilled through'],
		['not named', 'went through']
	]);
});

test('the table of readings says which ones somebody else told', () => {
	const readings = readingPoints([inventedReading({ secondHand: true })], '2027-02-10');
	expect(readingsTable(readings, METRIC).rows[0]?.cells[2]).toMatch(/; told by somebody else$/);
});
