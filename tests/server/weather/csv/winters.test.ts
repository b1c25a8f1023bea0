import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { previewCsv } from '#lib/server/weather/csv/preview.ts';
import { lines, readAll } from './read-all.ts';

const MEASURED = [
	{
		folder: 'fi_kallavesi',
		timeZone: 'Europe/Helsinki',
		first: '1960-07-01',
		last: '1990-06-30',
		days: 10_957
	},
	{
		folder: 'ntl_trout_lake_area',
		timeZone: 'America/Chicago',
		first: '1981-07-01',
		last: '2000-06-30',
		days: 6940
	}
] as const;

describe.runIf(existsSync('../shared/winters'))('measured winters', () => {
	test.each(MEASURED)('the weather of $folder is read as it is', async (record) => {
		const bytes = readFileSync(`../shared/winters/${record.folder}/weather.csv`);
		const read = await readAll(bytes, { timeZone: record.timeZone });
		expect(read.rejected).toEqual([]);
		expect(read.days.length).toBe(record.days);
		expect([read.days[0]?.on, read.days.at(-1)?.on]).toEqual([record.first, record.last]);
		const [header = '', ...rows] = bytes.toString().trim().split('\n');
		const names = header.trim().split(',');
		for (const [index, row] of rows.entries()) {
			const cell = (name: string) => row.trim().split(',')[names.indexOf(name)] ?? '';
			const number = (text: string) => (text === '' ? null : Number(text));
			expect(read.days[index]).toMatchObject({
				on: cell('date'),
				air_degC: number(cell('tmean_c')),
				precipitation_kg_m2: number(cell('precip_mm')),
				snowfall_kg_m2: number(cell('snowfall_we_mm')) ?? number(cell('snowfall_cm'))
			});
		}
	});

	test.each(MEASURED)('nothing about $folder has to be assumed', ({ folder, timeZone }) => {
		const head = readFileSync(`../shared/winters/${folder}/weather.csv`).subarray(0, 65_536);
		const preview = previewCsv(head, { timeZone });
		expect(preview).toMatchObject({ ok: true, warnings: [], problems: [], step: 'daily' });
	});
});

test('a file of the same form as the measured winters is read in all its columns', async () => {
	const { days, rejected } = await readAll(
		lines(
			'date,tmean_c,tmin_c,tmax_c,precip_mm,snowfall_cm,snow_depth_cm,snowfall_we_mm,source',
			'2030-12-01,-7.25,-11,-2,4.5,6,14,4.1,made up',
			'2030-12-02,-3.5,,,0,,,0,made up'
		)
	);
	expect(rejected).toEqual([]);
	expect(
		days.map(({ air_degC, snowfall_kg_m2, landSnow_m }) => [air_degC, snowfall_kg_m2, landSnow_m])
	).toEqual([
		[-7.25, 4.1, 0.14],
		[-3.5, 0, null]
	]);
});
