import { expect, test } from 'vitest';
import { bandDays } from '#lib/ui/charts/band.ts';
import { comingSentence, comingTable, comingWeather } from '#lib/ui/charts/coming.ts';
import { knownDays } from '#lib/ui/charts/series.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const future = inventedFuture();
const coming = knownDays(future.days.filter(({ on }) => on > future.asOf));
const band = bandDays(future.days);

test('what may come is told with its peak, its doubt and what it goes by', () => {
	expect(comingSentence(coming, band, 'past winters', METRIC)).toBe(
		'From there to 10 May by forecast, then past winters: at most 52 cm on 25 Mar, nine holes in ten 40 to 63 cm.'
	);
});

test('each week to come has its row', () => {
	const { columns, rows } = comingTable(coming, band, 'past winters', METRIC);
	expect(columns).toHaveLength(4);
	expect(rows.at(0)?.cells).toEqual(['1 Feb', 'forecast', '38 cm', '33 to 44 cm']);
	expect(rows.at(-1)?.cells).toEqual(['10 May', 'past winters', '0 cm', '0 to 17 cm']);
	expect(comingTable(coming, [], 'past winters', METRIC).rows[0]?.cells.slice(1)).toEqual([
		'no weather',
		'38 cm',
		'not known'
	]);
});

test('frost, thaw and snow to come are told with what they are of what may come', () => {
	const told = comingWeather(coming, METRIC);
	expect(told?.frost).toMatch(
		/^By 10 May, as the mean of what may come: \d+ °C·d of frost and \d+ °C·d of thaw\.$/
	);
	expect(told?.snow).toMatch(/^To come, as the median of what may: at most \d+ cm on \d+ \w+\.$/);
});

test('what stands in past the forecast is named as what it is', () => {
	const usual = comingSentence(coming, band, 'usual climate', METRIC);
	expect(usual).toContain('by forecast, then usual climate');
	expect(comingTable(coming, band, 'usual climate', METRIC).rows.at(-1)?.cells[1]).toBe(
		'usual climate'
	);
});

test('where nothing is estimated nothing is told', () => {
	expect(comingWeather([], METRIC)).toBeNull();
	expect(comingSentence([], [], 'past winters', METRIC)).toBeNull();
	expect(comingTable([], [], 'past winters', METRIC).rows).toEqual([]);
});
