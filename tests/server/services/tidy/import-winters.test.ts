import { expect, test } from 'vitest';
import { listLakes } from '../../../../src/lib/server/services/lakes.ts';
import { listReadings } from '../../../../src/lib/server/services/readings.ts';
import { importWinters } from '../../../../src/lib/server/services/tidy/import-winters.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import { getSiteWinter } from '../../../../src/lib/server/services/winters.ts';
import { apiOf } from '../../../support/api.ts';
import { freshContext } from '../../../support/fresh-context.ts';

/** As somebody else would make it: two lakes that share a weather record, nothing of ours in it. */
function foreign(changes: Record<string, string | null> = {}): Map<string, string> {
	const files: Record<string, string | null> = {
		'lakes.csv':
			'dataset,lake,name,country,lat,lon,area_km2,mean_depth_m,elevation_m,source\n' +
			'pair,A,Upper Pond,nowhere,50,-40,1.5,3,200,invented\n' +
			'pair,B,Lower Pond,nowhere,50.1,-40,,,,invented\n',
		'pair/weather.csv':
			'date,tmean_c,tmin_c,tmax_c,precip_mm,snowfall_cm,snow_depth_cm,source\n' +
			'2001-12-01,-5,,,2,1.5,10,invented\n2001-12-02,,,,,,,invented\n2001-12-03,-8,,,0,0,12,invented\n',
		'pair/freezeup.csv':
			'lake,winter,freeze_up_date,ice_out_date,notes\n' +
			'A,2001-02,2001-11-20,2002-05-01,\nB,2001-02,2001-11-25,2002-04-20,opened in mid-winter\n' +
			'A,2002-03,,,\nX,2001-02,2001-11-20,,\n',
		'pair/ice.csv':
			'lake,date,total_cm,clear_cm,white_cm,snow_cm,qc\n' +
			'A,2002-01-10,30.1,25.1,5,4,\nA,2002-02-10,99,,,,spike\nB,2002-01-11,28,,,,\nA,2002-03-01,,,,,\n',
		...changes
	};
	return new Map(
		Object.entries(files).filter((entry): entry is [string, string] => entry[1] !== null)
	);
}

test('lakes that share a weather record become lakes of their own', async () => {
	const ctx = await freshContext();
	const report = await importWinters(ctx, foreign());
	expect(report.status).toBe('stored');
	expect(report.lakes).toMatchObject([
		{ id: 'upper-pond', winters: 1, readings: 1, days: 2 },
		{ id: 'lower-pond', winters: 0, readings: 1, days: 2 }
	]);
	expect(await listWeather(ctx, 'upper-pond')).toMatchObject([
		{
			on: '2001-12-01',
			air_degC: -5,
			precipitation_kg_m2: 2,
			snowfall_kg_m2: 1.5,
			landSnow_m: 0.1
		},
		{ on: '2001-12-03', air_degC: -8 }
	]);
	expect(await listReadings(ctx, 'upper-pond', 'main')).toMatchObject([
		{ on: '2002-01-10', holes: [{ total_m: 0.301, clear_m: 0.251, white_m: 0.05, snow_m: 0.04 }] }
	]);
	expect(await getSiteWinter(ctx, 'upper-pond', 'main', '2001-02')).toMatchObject({
		freezeUpOn: '2001-11-20',
		iceOutOn: '2002-05-01'
	});
});

test('what is not taken is told line by line, a winter that opened again above all', async () => {
	const { leftOut } = await importWinters(await freshContext(), foreign());
	expect(leftOut.map(({ file, line }) => `${file} ${line}`)).toEqual([
		'pair/freezeup.csv 5',
		'pair/freezeup.csv 4',
		'pair/ice.csv 3',
		'pair/freezeup.csv 3'
	]);
	expect(leftOut.at(-1)?.reason).toMatch(/opened in mid-winter.*estimated too thick/);
});

test.each([
	['lakes.csv', null, 'lakes.csv 0 is missing'],
	['lakes.csv', 'dataset,lake,lat,lon\npair,A,95,0\n', 'lakes.csv 2 latitude must be from -90'],
	['lakes.csv', 'dataset,lake,lat,lon\n../up,A,5,0\n', 'lakes.csv 2 column dataset: "../up"'],
	['lakes.csv', 'dataset,lake,lat\npair,A,5\n', 'lakes.csv 0 has no column lon'],
	['pair/weather.csv', null, 'pair/weather.csv 0 is missing'],
	['pair/weather.csv', 'date,tmean_c\n2001-13-01,1\n', 'pair/weather.csv 2 column date: a day is'],
	[
		'pair/weather.csv',
		'date,tmean_c\n2001-12-01,cold\n',
		'pair/weather.csv 2 column tmean_c: "cold"'
	],
	[
		'pair/weather.csv',
		'date,tmean_c\n2001-12-01,268\n',
		'pair/weather.csv 2 column tmean_c: "268"'
	],
	['pair/ice.csv', 'lake,date,total_cm\nA,2002-01-10,3000\n', 'pair/ice.csv 2 holes.0.total_m'],
	[
		'pair/freezeup.csv',
		'lake,winter,freeze_up_date\nA,2001-02,2003-01-01\n',
		'pair/freezeup.csv 2 winter 2001-02, freezeUpOn must lie in the winter'
	],
	[
		'pair/freezeup.csv',
		'lake,winter,freeze_up_date\nA,2001-02,2001-12-01\nA,2001-02,2001-12-02\n',
		'pair/freezeup.csv 3 winter 2001-02 is there twice'
	],
	[
		'pair/events.csv',
		'lake,winter,on,kind,snow_cm\nA,2001-02,2001-12-24,cleared,\n',
		'pair/freezeup.csv 2 winter 2001-02, events.0.snow_m'
	],
	[
		'pair/readings/main.csv',
		'on,total_cm\nsoon,12\n',
		'pair/readings/main.csv 2 "soon" is not a day'
	]
])(
	'a wrong %s (%j) is refused with its place, and nothing is stored',
	async (file, text, where) => {
		const ctx = await freshContext();
		const { status, problems } = await importWinters(ctx, foreign({ [file]: text }));
		expect(status).toBe('refused');
		const told = problems.map(({ file, line, reason }) => `${file} ${line} ${reason}`);
		expect(told.join('\n')).toContain(where);
		expect(await listLakes(ctx)).toEqual([]);
	}
);

test('a lake is carried over the API, and a dry run of it stores nothing', async () => {
	const api = apiOf(await freshContext());
	const other = apiOf(await freshContext());
	const made = await api('POST', '/api/v1/lakes', {
		body: { name: 'Carried', latitude: 50, longitude: -40, water: 'lake' }
	});
	expect(made.status).toBe(201);
	const zip = await api('GET', '/api/v1/lakes/carried/winters.zip');
	expect(zip.headers.get('content-disposition')).toBe('attachment; filename="carried-winters.zip"');
	const bytes = new Uint8Array(await zip.arrayBuffer());
	const send = (address: string, type = 'application/zip') =>
		other('POST', address, {
			text: new Blob([bytes]).stream(),
			headers: { 'content-type': type }
		});
	const dry = await send('/api/v1/winters?dryRun=1');
	expect(dry.status).toBe(200);
	expect(await dry.json()).toMatchObject({ status: 'dryRun', lakes: [{ id: null }] });
	expect(await (await other('GET', '/api/v1/lakes')).json()).toEqual([]);
	const stored = await send('/api/v1/winters');
	expect(stored.status).toBe(201);
	expect(await stored.json()).toMatchObject({ lakes: [{ id: 'carried', name: 'Carried' }] });
	expect((await send('/api/v1/winters', 'text/csv')).status).toBe(415);
	const bad = await other('POST', '/api/v1/winters', {
		text: 'no zip',
		headers: { 'content-type': 'application/zip' }
	});
	expect(bad.status).toBe(400);
	expect(await bad.json()).toMatchObject({ detail: expect.stringContaining('cannot be unpacked') });
});
