import { expect, test } from 'vitest';
import { faultsOverTime } from '../../../../src/lib/server/services/refresh/over-time.ts';
import { storeHistory } from '../../../../src/lib/server/services/refresh/store-history.ts';
import { joinChanged } from '../../../../src/lib/server/services/joining.ts';
import { importWeather } from '../../../../src/lib/server/services/import-weather.ts';
import { listAllUses } from '../../../../src/lib/server/storage/lake-sources.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';
import {
	askingOf,
	hoursFrom,
	inventedSource,
	useSource
} from '../../../support/invented-source.ts';
import { inPieces } from '../../../support/winter-csv.ts';

const NOW = '2027-01-20T12:00:00Z';

/** What is said of hours from the tenth on, with imported weather beside them or without. */
async function faults(air: readonly (number | null)[], csv: string | null = null) {
	const ctx = await freshContext(NOW);
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await useSource(ctx, id);
	if (csv) await importWeather(ctx, id, inPieces(csv));
	const [use] = await listAllUses(ctx.db, id);
	if (!use) throw new Error('the lake has no source');
	const hours = hoursFrom('2027-01-10T00:00:00Z', air).filter(({ air_degC }) => air_degC !== null);
	const span = { from: '2027-01-10', to: '2027-01-20' };
	await storeHistory(ctx.db, await askingOf(ctx), { hours, days: [] }, span);
	await joinChanged(ctx, id);
	return faultsOverTime(ctx, use, inventedSource(), 'Etc/UTC');
}

const HOURS = 252; // to noon of the twentieth

const wave = (hour: number) => {
	const front = 6 * Math.tanh((hour - 120) / 10);
	return Number((-8 + 4 * Math.cos((2 * Math.PI * (hour - 14)) / 24) - front).toFixed(1));
};
const good = Array.from({ length: HOURS }, (_, hour) => wave(hour));

test('a record that is as it should be is not spoken of', async () => {
	expect(await faults(good)).toEqual([]);
});

test('a station that sticks is told of with since when, and what to do', async () => {
	const stuck = good.map((air, hour) => (hour >= HOURS - 30 ? -18.4 : air));
	const [fault] = await faults(stuck);
	expect(fault).toMatchObject({ code: 'stuck', count: 30, at: '2027-01-19T06:00:00.000Z' });
	expect(fault?.text).toBe(
		'Invented Weather has told -18.4 °C for 30 hours without a change, since 2027-01-19 06:00 UTC: these hours are left out. Choose another station, or another source until it is mended.'
	);
});

test('a station that stuck once and moves again is not held to it', async () => {
	const before = good.map((air, hour) => (hour >= 100 && hour < 130 ? -18.4 : air));
	expect(await faults(before)).toEqual([]);
});

test('an observation that is older than the source’s own lag is told of in hours', async () => {
	expect(await faults(good.slice(0, HOURS - 13))).toEqual([]);
	const [fault] = await faults(good.slice(0, HOURS - 14));
	expect(fault).toMatchObject({ code: 'stale', count: 14 });
	expect(fault?.text).toContain('is 14 hours old, of 2027-01-19 22:00 UTC');
});

test('hours that lack are counted', async () => {
	const holes = good.map((air, hour) => ([200, 201, 230].includes(hour) ? null : air));
	expect(await faults(holes)).toMatchObject([{ code: 'missing', count: 3 }]);
	const everyThird = good.map((air, hour) => (hour % 3 === 0 ? air : null));
	expect((await faults(everyThird)).filter(({ code }) => code === 'missing')).toEqual([]);
});

test('a clock that is off is told of beside imported hours', async () => {
	const rows = good.map((air, hour) => {
		const at = new Date(Date.UTC(2027, 0, 10) + hour * 3_600_000).toISOString();
		return `${at},${air}`;
	});
	const csv = `time,temperature_c\n${rows.join('\n')}\n`;
	const late = Array.from({ length: HOURS }, (_, hour) => wave(hour - 5));
	expect(await faults(good, csv)).toEqual([]);
	const [fault] = await faults(late, csv);
	expect(fault).toMatchObject({ code: 'clockDoubt' });
	expect(fault?.text).toContain('the same weather 5 hours later than your CSV');
});
