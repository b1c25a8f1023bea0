import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readTidyFolder } from '../../../src/commands/validate/tidy-folder.ts';
import { inventedFolder } from './tidy-winters.ts';

function invented(): string {
	const readings = [{ on: '2002-01-10', total_cm: 20 }];
	const lakes = [{ code: 'A', freezeUpOn: '2001-12-01', readings }];
	return inventedFolder({ lakes, air_degC: () => -10 });
}

function weatherRow(header: string, row: string) {
	const folder = invented();
	writeFileSync(join(folder, 'invented/weather.csv'), `${header}\n${row}\n`);
	return readTidyFolder(folder)[0]?.weather[0];
}

test('an empty cell is unknown, never zero', () => {
	const day = weatherRow('date,tmean_c,tmin_c,tmax_c,precip_mm,snowfall_cm', '2001-12-01,,,,,');
	expect(day).toMatchObject({
		air_degC: null,
		min_degC: null,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null
	});
});

test('snowfall is taken as water where given, else as a tenth of its depth', () => {
	const header = 'date,tmean_c,snowfall_cm,snowfall_we_mm';
	expect(weatherRow(header, '2001-12-01,-5,7,')?.snowfall_kg_m2).toBe(7);
	expect(weatherRow(header, '2001-12-01,-5,7,4.2')?.snowfall_kg_m2).toBe(4.2);
});

test('snow on land is in metres', () => {
	expect(weatherRow('date,tmean_c,snow_depth_cm', '2001-12-01,-5,35')?.landSnow_m).toBe(0.35);
});

test('the lake carries its facts, unknown ones as null', () => {
	const folder = invented();
	const header = 'dataset,lake,name,lat,lon,area_km2,mean_depth_m,elevation_m';
	writeFileSync(join(folder, 'lakes.csv'), `${header}\ninvented,A,Invented,62,25,0.5,,\n`);
	expect(readTidyFolder(folder)[0]?.lakes.get('A')).toEqual({
		latitude: 62,
		longitude: 25,
		area_km2: 0.5,
		meanDepth_m: null,
		elevation_m: null,
		water: 'lake'
	});
});

test('a folder or file that is not there is named', () => {
	expect(() => readTidyFolder('/nowhere/invented')).toThrow('there is no folder');
	const folder = invented();
	rmSync(join(folder, 'invented/ice.csv'));
	expect(() => readTidyFolder(folder)).toThrow('invented/ice.csv is missing');
});

test('a cell that cannot be read is named by file, line and column', () => {
	const folder = invented();
	const file = join(folder, 'invented/ice.csv');
	writeFileSync(file, 'lake,date,total_cm\nA,2002-01-10,20\nA,2002-01-20,thick\n');
	expect(() => readTidyFolder(folder)).toThrow(
		'invented/ice.csv line 3, column total_cm: "thick" is not a number'
	);
	writeFileSync(file, 'lake,date,total_cm\nA,10.1.2002,20\n');
	expect(() => readTidyFolder(folder)).toThrow('line 2, column date: a day is written YYYY-MM-DD');
});

test('a file without a needed column, without rows or with ragged rows is refused', () => {
	const folder = invented();
	const file = join(folder, 'invented/freezeup.csv');
	writeFileSync(file, 'lake,winter\nA,2001-02\n');
	expect(() => readTidyFolder(folder)).toThrow('no column freeze_up_date');
	writeFileSync(file, 'lake,winter,freeze_up_date\n');
	expect(() => readTidyFolder(folder)).toThrow('freezeup.csv has no rows');
	writeFileSync(file, 'lake,winter,freeze_up_date\nA,2001-02,2001-12-01,x,y\n');
	expect(() => readTidyFolder(folder)).toThrow('is not a comma-separated table');
});
