import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween, type IsoDate } from '../../../src/lib/model/calendar.ts';
import type { Forecast } from '../../../src/lib/model/forecast.ts';
import { forecast as forecastAnswer } from '../../../src/routes/api/v1/openapi.json/answers.ts';
import { apiOf } from '../../support/api.ts';
import { freshContext } from '../../support/fresh-context.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

interface Winter {
	csv: string;
	winter: string;
	freezeUpOn: IsoDate;
	iceOutOn: IsoDate | null;
	/** The last day that the forecast is asked for. */
	last: IsoDate;
	lake: object;
}

/** Takes a winter from an empty database to its forecast, by the API alone. */
async function forecastOf({ csv, winter, freezeUpOn, iceOutOn, lake }: Winter) {
	const call = apiOf(await freshContext());
	const made = await call('POST', '/api/v1/lakes', { body: { name: 'Lake', ...lake } });
	const { id } = (await made.json()) as { id: string };
	const posted = await call('POST', `/api/v1/lakes/${id}/weather`, { text: inPieces(csv, 60_013) });
	const report = (await posted.json()) as { accepted: number; rejected: unknown[] };
	expect(posted.status).toBe(200);
	expect(report.rejected).toEqual([]);
	expect(report.accepted).toBe(csv.trim().split('\n').length - 1);
	const body = { freezeUpOn, iceOutOn };
	expect((await call('PUT', `/api/v1/lakes/${id}/winters/${winter}`, { body })).status).toBe(200);
	const address = `/api/v1/lakes/${id}/forecast`;
	const response = await call('GET', `${address}?winter=${winter}`);
	expect(response.status).toBe(200);
	const table = await (await call('GET', `${address}.csv?winter=${winter}`)).text();
	return { forecast: (await response.json()) as Forecast, table };
}

async function expectDayByDay(measured: Winter): Promise<void> {
	const { winter, freezeUpOn, last } = measured;
	const { forecast, table } = await forecastOf(measured);
	expect(forecastAnswer.parse(forecast)).toEqual(forecast);
	expect(forecast).toMatchObject({ site: 'main', winter, asOf: last });
	const days = forecast.days.map(({ on }) => on);
	const expected = Array.from({ length: daysBetween(freezeUpOn, last) + 1 }, (_, index) =>
		addDays(freezeUpOn, index)
	);
	expect(days).toEqual(expected);
	for (const day of forecast.days) {
		expect(day.air_degC, day.on).not.toBeNull();
		const { p10, p50 } = day.total_m;
		expect(p10, day.on).toBeGreaterThanOrEqual(0);
		expect(p50, day.on).toBeGreaterThanOrEqual(p10 ?? NaN);
		expect(p50, day.on).toBeLessThan(1.5);
	}
	expect(Math.max(...forecast.days.map(({ total_m }) => total_m.p50 ?? NaN))).toBeGreaterThan(0.2);
	expect(forecast.loads.map((load) => load.days.length)).toEqual(
		forecast.loads.map(() => days.length)
	);
	expect(table.trim().split('\r\n')).toHaveLength(days.length + 1);
	expect(table).not.toMatch(/NaN|undefined|null/);
}

test('a winter of the same form is answered day by day', async () => {
	await expectDayByDay({
		csv: winterCsv('2025-07-01', 340),
		winter: '2025-26',
		freezeUpOn: '2025-12-02',
		iceOutOn: '2026-04-25',
		last: '2026-04-25',
		lake: { latitude: 47.4, longitude: -38.2, area_km2: 2, meanDepth_m: 6, water: 'lake' }
	});
});

test('a winter without a freeze-up says so instead of estimating', async () => {
	const call = apiOf(await freshContext());
	const body = { name: 'Lake', latitude: 47.4, longitude: -38.2, water: 'lake' };
	await call('POST', '/api/v1/lakes', { body });
	await call('POST', '/api/v1/lakes/lake/weather', { text: winterCsv('2026-10-01', 90) });
	const response = await call('GET', '/api/v1/lakes/lake/forecast');
	expect(response.status).toBe(200);
	expect(await response.json()).toMatchObject({
		days: [],
		loads: [],
		cautions: [{ code: 'noFreezeUp', text: expect.stringContaining('freeze-up') }]
	});
});

test('a dry run answers like the import and stores nothing', async () => {
	const call = apiOf(await freshContext());
	const body = { name: 'Lake', latitude: 47.4, longitude: -38.2, water: 'lake' };
	await call('POST', '/api/v1/lakes', { body });
	const text = winterCsv('2026-10-01', 90);
	const dry = await call('POST', '/api/v1/lakes/lake/weather?dryRun=1', { text });
	expect(dry.status).toBe(200);
	const report = await dry.json();
	expect(report).toMatchObject({ accepted: 90, replaced: 0, from: '2026-10-01', to: '2026-12-29' });
	const stored = await (await call('GET', '/api/v1/lakes/lake/weather')).json();
	expect(stored).toEqual({ from: null, to: null, days: [] });
	expect(await (await call('POST', '/api/v1/lakes/lake/weather', { text })).json()).toEqual(report);
});

test('a guess can be corrected in the address', async () => {
	const call = apiOf(await freshContext());
	const body = { name: 'Lake', latitude: 47.4, longitude: -38.2, water: 'lake' };
	await call('POST', '/api/v1/lakes', { body });
	const text = 'date,tmean_c,inside\n2027-01-01,-3,20\n2027-01-02,-4,21\n2027-01-03,-5,19\n';
	const columns = [
		{ index: 1, role: 'ignore' },
		{ index: 2, role: 'air', unit: '°C' }
	];
	const address = `/api/v1/lakes/lake/weather?columns=${encodeURIComponent(JSON.stringify(columns))}`;
	expect((await call('POST', address, { text })).status).toBe(200);
	const { days } = (await (await call('GET', '/api/v1/lakes/lake/weather')).json()) as {
		days: { air_degC: number }[];
	};
	expect(days.map(({ air_degC }) => air_degC)).toEqual([20, 21, 19]);
});

test('stored weather comes as a table that can be taken in again', async () => {
	const ctx = await freshContext();
	const call = apiOf(ctx);
	for (const name of ['One', 'Two']) {
		const body = { name, latitude: 47.4, longitude: -38.2, water: 'lake' };
		await call('POST', '/api/v1/lakes', { body });
	}
	await call('POST', '/api/v1/lakes/one/weather', { text: winterCsv('2026-10-01', 90) });
	const headers = { accept: 'text/csv' };
	const text = await (await call('GET', '/api/v1/lakes/one/weather', { headers })).text();
	expect((await call('POST', '/api/v1/lakes/two/weather', { text })).status).toBe(200);
	const days = async (lake: string) =>
		(await call('GET', `/api/v1/lakes/${lake}/weather?from=2026-11-01`)).json();
	expect(await days('two')).toEqual(await days('one'));
});

const SHARED = '../shared/winters';

describe.runIf(existsSync(SHARED))('measured winters (skipped where they are absent)', () => {
	test.each([
		['ntl_trout_lake_area', 'AL', '1995-96'],
		['fi_kallavesi', 'Kallavesi', '1980-81']
	])('%s, %s, %s is answered day by day', async (dataset, lake, winter) => {
		const read = (name: string) => readFileSync(join(SHARED, name), 'utf8');
		const rows = (name: string) =>
			read(name)
				.trim()
				.split('\n')
				.map((row) => row.split(','));
		const row = rows(`${dataset}/freezeup.csv`).find((row) => row[0] === lake && row[1] === winter);
		const [, , freezeUpOn = '', iceOutOn = ''] = row ?? [];
		const facts = rows('lakes.csv').find((row) => row[0] === dataset && row[1] === lake) ?? [];
		const [latitude, longitude, area_km2, meanDepth_m] = facts.slice(4, 8).map(Number);
		await expectDayByDay({
			csv: read(`${dataset}/weather.csv`),
			winter,
			freezeUpOn,
			iceOutOn,
			last: iceOutOn,
			lake: { latitude, longitude, area_km2, meanDepth_m, water: 'lake' }
		});
	});
});
