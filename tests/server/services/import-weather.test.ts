import { expect, test } from 'vitest';
import type { Context } from '../../../src/lib/server/context.ts';
import { importWeather, previewWeather } from '../../../src/lib/server/services/import-weather.ts';
import { updateLake } from '../../../src/lib/server/services/lakes.ts';
import { listWeather } from '../../../src/lib/server/services/weather-csv.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

async function lakeIn(timeZone = 'Etc/GMT+3', now?: string) {
	const ctx = await freshContext(now);
	return { ctx, lake: (await inventedLake(ctx, { timeZone })).id };
}

function take(ctx: Context, lake: string, csv: string, dryRun = false) {
	return importWeather(ctx, lake, inPieces(csv), { dryRun });
}

/** Hours of UTC with the temperature of each. */
function hourlyCsv(from: string, hours: number, celsius: (hour: number) => number): string {
	const start_ms = Date.parse(from);
	const rows = Array.from({ length: hours }, (_, hour) => {
		const at = new Date(start_ms + hour * 3_600_000).toISOString();
		return `${at.slice(0, 19)}Z,${celsius(hour).toFixed(1)}`;
	});
	return `time,temperature_c\n${rows.join('\n')}\n`;
}

test('a file of days is stored, with its span and its gaps', async () => {
	const { ctx, lake } = await lakeIn();
	const lines = winterCsv('2026-10-01', 100).split('\n');
	const withGap = [...lines.slice(0, 40), ...lines.slice(43)].join('\n');
	const report = await take(ctx, lake, withGap);
	expect(report).toMatchObject({
		status: 'stored',
		accepted: 97,
		replaced: 0,
		repeated: 0,
		rejectedCount: 0,
		step: 'daily',
		from: '2026-10-01',
		to: '2027-01-08',
		gapDays: 3
	});
	expect(report.columns.map(({ role }) => role)).toContain('air');
	const days = await listWeather(ctx, lake);
	expect(days).toHaveLength(97);
	expect(days[0]).toMatchObject({ on: '2026-10-01', source: 'observed', precipitation_kg_m2: 3 });
});

test('a second file replaces what it has values for and keeps the rest', async () => {
	const { ctx, lake } = await lakeIn();
	await take(ctx, lake, 'date,tmean_c,precip_mm\n2027-01-01,-3,2\n2027-01-02,-4,0\n');
	const second = 'date,tmean_c,precip_mm\n2027-01-02,-9,\n2027-01-03,-5,1\n';
	expect(await take(ctx, lake, second)).toMatchObject({ accepted: 2, replaced: 1 });
	expect(await listWeather(ctx, lake)).toMatchObject([
		{ on: '2027-01-01', air_degC: -3, precipitation_kg_m2: 2 },
		{ on: '2027-01-02', air_degC: -9, precipitation_kg_m2: 0 },
		{ on: '2027-01-03', air_degC: -5, precipitation_kg_m2: 1 }
	]);
});

test('a dry run reports the same as the import and stores nothing', async () => {
	const { ctx, lake } = await lakeIn();
	const csv = winterCsv('2026-10-01', 30);
	const { status: _, ...dry } = await take(ctx, lake, csv, true);
	expect(await listWeather(ctx, lake)).toEqual([]);
	const { status, ...report } = await take(ctx, lake, csv);
	expect(status).toBe('stored');
	expect(report).toEqual(dry);
});

test('rows that cannot be read are listed and the others stored', async () => {
	const { ctx, lake } = await lakeIn();
	const lines = winterCsv('2026-10-01', 30).split('\n');
	lines[5] = '2026-10-05,not measured by anybody,,,,,,,made';
	const report = await take(ctx, lake, lines.join('\n'));
	expect(report.status).toBe('stored');
	expect(report.rejected.map(({ line }) => line)).toEqual([6]);
	expect(report.accepted).toBe(29);
});

test.each([
	['nothing', ''],
	['a header alone', 'date,tmean_c\n'],
	['a page', '<!doctype html><html><body>Not found</body></html>'],
	['no temperatures', 'name,colour\nA,red\nB,blue\n']
])('%s is refused with a reason, and stores nothing', async (_, csv) => {
	const { ctx, lake } = await lakeIn();
	const report = await take(ctx, lake, csv);
	expect(report).toMatchObject({ status: 'refused', accepted: 0 });
	expect(report.rejected[0]?.reason).toMatch(/\w{3}/);
	expect(await listWeather(ctx, lake)).toEqual([]);
});

test('a file that breaks off in transfer stores nothing', async () => {
	const { ctx, lake } = await lakeIn();
	const whole = new TextEncoder().encode(winterCsv('1990-10-01', 6000));
	async function* broken(): AsyncGenerator<Uint8Array> {
		yield whole.subarray(0, 150_000);
		throw new Error('connection lost');
	}
	await expect(importWeather(ctx, lake, broken())).rejects.toThrow('connection lost');
	expect(await listWeather(ctx, lake)).toEqual([]);
	expect(await take(ctx, lake, winterCsv('2026-10-01', 5))).toMatchObject({ accepted: 5 });
});

test('hours become days of the calendar at the lake', async () => {
	const { ctx, lake } = await lakeIn('Etc/GMT+3');
	const csv = hourlyCsv('2027-01-10T03:00:00Z', 48, (hour) =>
		hour < 24 ? -6 : hour < 30 ? 3 : -2
	);
	expect(await take(ctx, lake, csv)).toMatchObject({
		accepted: 48,
		step: 'hourly',
		from: '2027-01-10',
		to: '2027-01-11',
		gapDays: 0
	});
	expect(await listWeather(ctx, lake)).toMatchObject([
		{ on: '2027-01-10', air_degC: -6, freezing_degCd: 6, aboveFreezing_h: 0 },
		{ on: '2027-01-11', air_degC: -0.75, freezing_degCd: 1.5, thawing_degCd: 0.75 }
	]);
});

test('hours of a second file complete the days of the first', async () => {
	const { ctx, lake } = await lakeIn('Etc/GMT');
	await take(
		ctx,
		lake,
		hourlyCsv('2027-01-10T00:00:00Z', 36, () => -6)
	);
	expect(await listWeather(ctx, lake)).toMatchObject([{ air_degC: -6 }, { air_degC: null }]);
	await take(
		ctx,
		lake,
		hourlyCsv('2027-01-11T12:00:00Z', 36, () => -2)
	);
	expect(await listWeather(ctx, lake)).toMatchObject([
		{ on: '2027-01-10', air_degC: -6 },
		{ on: '2027-01-11', air_degC: -4, freezing_degCd: 4 },
		{ on: '2027-01-12', air_degC: -2 }
	]);
});

test('the days of a clock change have 23 and 25 hours', async () => {
	const { ctx, lake } = await lakeIn('Europe/Helsinki', '2027-11-10T12:00:00Z');
	await take(
		ctx,
		lake,
		hourlyCsv('2027-03-26T22:00:00Z', 72, () => -10)
	);
	const spring = await listWeather(ctx, lake);
	expect(spring.find(({ on }) => on === '2027-03-28')?.freezing_degCd).toBeCloseTo(10 * (23 / 24));
	await take(
		ctx,
		lake,
		hourlyCsv('2027-10-29T21:00:00Z', 73, () => -10)
	);
	const autumn = await listWeather(ctx, lake, '2027-10-01');
	expect(autumn.find(({ on }) => on === '2027-10-31')?.freezing_degCd).toBeCloseTo(10 * (25 / 24));
});

test('days and hours that are still to come are left out: a forecast never comes to pass for observed', async () => {
	const { ctx, lake } = await lakeIn('Etc/GMT+3', '2027-02-10T12:30:00Z');
	const days = await take(ctx, lake, winterCsv('2027-02-01', 16));
	expect(days).toMatchObject({
		status: 'stored',
		accepted: 10,
		to: '2027-02-10',
		rejectedCount: 6
	});
	expect(days.rejected[0]?.reason).toMatch(/still to come, so that nobody has observed it/);
	const hours = await take(
		ctx,
		lake,
		hourlyCsv('2027-02-10T00:00:00Z', 48, () => -6)
	);
	expect(hours).toMatchObject({ status: 'stored', accepted: 13, rejectedCount: 35 });
	const ahead = await take(ctx, lake, winterCsv('2027-02-11', 5));
	expect(ahead).toMatchObject({ status: 'refused', accepted: 0 });
});

test('the last row of a long step fills no hour that is still to come', async () => {
	const { ctx, lake } = await lakeIn('Etc/GMT', '2027-02-10T13:30:00Z');
	const rows = ['00', '06', '12'].map((hour) => `2027-02-10T${hour}:00:00Z,-6.0`);
	await take(ctx, lake, `time,temperature_c\n2027-02-09T18:00:00Z,-6.0\n${rows.join('\n')}\n`);
	const hours = await ctx.db.selectFrom('weather_hour').select('at_s').orderBy('at_s').execute();
	expect(hours.at(-1)?.at_s).toBe(Date.parse('2027-02-10T13:00:00Z') / 1000);
});

test('a new time zone builds the days from the hours again', async () => {
	const { ctx, lake } = await lakeIn('Etc/GMT');
	await take(
		ctx,
		lake,
		hourlyCsv('2027-01-10T00:00:00Z', 72, (hour) => (hour < 36 ? -6 : -2))
	);
	expect(await listWeather(ctx, lake)).toMatchObject([
		{ on: '2027-01-10', air_degC: -6 },
		{ on: '2027-01-11', air_degC: -4 },
		{ on: '2027-01-12', air_degC: -2 }
	]);
	await updateLake(ctx, lake, { timeZone: 'Etc/GMT+12' });
	expect(await listWeather(ctx, lake)).toMatchObject([
		{ on: '2027-01-09', air_degC: null },
		{ on: '2027-01-10', air_degC: -6 },
		{ on: '2027-01-11', air_degC: -2 },
		{ on: '2027-01-12', air_degC: null }
	]);
});

test('two files at once leave the days that both together make', async () => {
	const { ctx, lake } = await lakeIn('Etc/GMT');
	const evens = (hour: number) => Math.floor((hour + 12) / 24) % 2 === 0;
	const whole = hourlyCsv('2026-12-01T00:00:00Z', 24 * 60, (hour) => -(hour % 7)).split('\n');
	const half = (keep: (hour: number) => boolean) =>
		[whole[0], ...whole.slice(1, -1).filter((_, hour) => keep(hour))].join('\n');
	await Promise.all([
		take(ctx, lake, half(evens)),
		take(
			ctx,
			lake,
			half((hour) => !evens(hour))
		)
	]);
	const other = await lakeIn('Etc/GMT');
	await take(other.ctx, other.lake, whole.join('\n'));
	expect(await listWeather(ctx, lake)).toEqual(await listWeather(other.ctx, other.lake));
});

test('the preview of a head guesses what the import takes', async () => {
	const { ctx, lake } = await lakeIn();
	const head = new TextEncoder().encode(winterCsv('2026-10-01', 10));
	const { ok, columns, step } = await previewWeather(ctx, lake, head);
	expect({ ok, step }).toEqual({ ok: true, step: 'daily' });
	const air = columns.find(({ role }) => role === 'air');
	expect(air).toMatchObject({ header: 'tmean_c' });
});

test('200,000 hours are stored while others are answered', async () => {
	const { ctx, lake } = await lakeIn('Europe/Helsinki');
	const csv = hourlyCsv('2000-01-01T00:00:00Z', 200_000, (hour) => 8 * Math.sin(hour / 4) - 3);
	const done = new AbortController();
	let longest_ms = 0;
	const others = (async () => {
		while (!done.signal.aborted) {
			const asked_ms = performance.now();
			await listWeather(ctx, lake, '2027-01-01', '2027-01-31');
			longest_ms = Math.max(longest_ms, performance.now() - asked_ms);
			await new Promise((resolve) => setTimeout(resolve, 5));
		}
	})();
	const report = await importWeather(ctx, lake, inPieces(csv, 65_536));
	done.abort();
	await others;
	expect(report).toMatchObject({ status: 'stored', accepted: 200_000 });
	expect(report.gapDays).toBeLessThanOrEqual(1);
	expect(longest_ms).toBeLessThan(3000);
}, 120_000);
