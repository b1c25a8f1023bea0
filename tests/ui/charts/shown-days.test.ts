import { expect, test } from 'vitest';
import { lastEstimated, shownDays } from '#lib/ui/charts/shown-days.ts';
import { inventedForecast } from '../../support/invented-view.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const lastOf = (forecast: ReturnType<typeof inventedFuture>) => shownDays(forecast).days.at(-1)?.on;

test('days are shown to a week past the ice', () => {
	const iceOut = { p10: '2027-04-12', p50: '2027-04-20', p90: '2027-04-28' };
	expect(lastOf(inventedFuture({ iceOut }))).toBe('2027-05-05');
});

test('where the ice may outlast what is told, all of it is shown', () => {
	const iceOut = { p10: '2027-05-01', p50: null, p90: null };
	expect(lastOf(inventedFuture({ iceOut }))).toBe('2027-05-10');
	expect(lastOf(inventedFuture({ iceOut: { ...iceOut, p90: '2027-05-08' } }))).toBe('2027-05-10');
});

test('days that are not estimated are left out, but never the day asked for', () => {
	const late = { ...inventedForecast(), asOf: '2027-02-12' };
	expect(lastEstimated(late)).toBe('2027-02-10');
	expect(lastOf(late)).toBe('2027-02-12');
	const early = { p10: '2027-01-01', p50: '2027-01-05', p90: '2027-01-10' };
	expect(lastOf({ ...late, iceOut: early })).toBe('2027-02-12');
});
