import { expect, test } from 'vitest';
import { addDays, daysBetween } from '#lib/model/calendar.ts';
import { outlookInput } from '../../../src/lib/server/services/lake-view.ts';
import { whatChanges, type TriedId } from '../../../src/lib/server/services/what-changes.ts';
import { asked, weatherDay } from '../../support/invented-winter.ts';
import { drilledLake } from '../../support/drilled-lake.ts';

const snowy = (from: string, days: number) =>
	Array.from({ length: days }, (_, index) =>
		weatherDay(addDays(from, index), -8, { precipitation_kg_m2: 1, snowfall_kg_m2: 1 })
	);
const INPUT = asked([], {
	weather: snowy('2026-12-01', 40),
	past: ['2023', '2024', '2025'].flatMap((year) => snowy(`${year}-10-01`, 220)),
	asOf: '2027-01-09',
	until: '2027-04-15'
});

test('cleared snow and a cold week bring a load sooner, a flood is tried where snow can make one', async () => {
	const changes = await whatChanges(INPUT, 10);
	expect(changes?.tried.map(({ id }) => id)).toEqual(['cleared', 'coldWeek', 'flood']);
	const later_d = (id: TriedId, loadId: string) => {
		const asIs = changes?.asIs.find((load) => load.id === loadId)?.expectedFrom ?? '2027-04-16';
		const tried = changes?.tried.find((each) => each.id === id)?.loads;
		const other = tried?.find((load) => load.id === loadId)?.expectedFrom ?? '2027-04-16';
		return daysBetween(asIs, other);
	};
	expect(later_d('cleared', 'car')).toBeLessThan(0);
	expect(later_d('coldWeek', 'car')).toBeLessThanOrEqual(0);
	expect(later_d('cleared', 'car')).toBeLessThanOrEqual(later_d('coldWeek', 'car'));
});

test('a flood that would take more snow than falls is not tried', async () => {
	const changes = await whatChanges(INPUT, 45);
	expect(changes?.tried.map(({ id }) => id)).toEqual(['cleared', 'coldWeek']);
	expect(changes?.floodSnow_m).toBeNull();
});

test('the same input is tried once', async () => {
	const { ctx, id } = await drilledLake();
	const first = whatChanges(await outlookInput(ctx, id, { toWinterEnd: true }), 12);
	expect(whatChanges(await outlookInput(ctx, id, { toWinterEnd: true }), 12)).toBe(first);
	expect((await first)?.asIs.length).toBeGreaterThan(5);
});
