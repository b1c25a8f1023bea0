import { expect, test } from 'vitest';
import { bandDays } from '#lib/ui/charts/band.ts';
import { comingSentence, comingTable } from '#lib/ui/charts/coming.ts';
import { knownDays } from '#lib/ui/charts/series.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const future = inventedFuture();
const coming = knownDays(future.days.filter(({ on }) => on > future.asOf));
const band = bandDays(future.days);

test('what may come is told with its peak, its doubt and what it goes by', () => {
	expect(comingSentence(coming, band, METRIC)).toBe(
		'From there to 10 May by forecast, then past winters: at most 52 cm on 25 Mar, nine holes in ten 40 to 63 cm.'
	);
});

test('each week to come has its row', () => {
	const { columns, rows } = comingTable(coming, band, METRIC);
	expect(columns).toHaveLength(4);
	expect(rows.at(0)?.cells).toEqual(['1 Feb', 'forecast', '39 cm', '33 to 44 cm']);
	expect(rows.at(-1)?.cells).toEqual(['10 May', 'past winters', '0 cm', '0 to 17 cm']);
	expect(comingTable(coming, [], METRIC).rows[0]?.cells.slice(1)).toEqual([
		'no weather',
		'39 cm',
		'not known'
	]);
});

test('where nothing is estimated nothing is told', () => {
	expect(comingSentence([], [], METRIC)).toBeNull();
	expect(comingTable([], [], METRIC).rows).toEqual([]);
});
