import { expect, test } from 'vitest';
import type { ColumnGuess } from '#lib/server/weather/csv/contract.ts';
import { previewCsv } from '#lib/server/weather/csv/preview.ts';
import { readCsv } from '#lib/server/weather/csv/read.ts';
import { daily, HERE, lines, pieces, readAll, toBytes } from './read-all.ts';

const at = (iso: string) => Date.parse(iso) / 1000;

function roles(content: string | Uint8Array, options = HERE): string[] {
	const preview = previewCsv(toBytes(content), options);
	return preview.columns.map(({ role, unit }) => (unit === null ? role : `${role} ${unit}`));
}

test('a daily record is read with its units turned into those of the model', async () => {
	const { days, rejected } = await readAll(
		lines(
			'date,tmean_c,tmin_c,tmax_c,precip_mm,snowfall_cm,snow_depth_cm,wind_kmh',
			'2024-01-01,-5.5,-9,-2,3.2,4,25,18'
		)
	);
	expect(rejected).toEqual([]);
	expect(days).toEqual([
		{
			on: '2024-01-01',
			air_degC: -5.5,
			min_degC: -9,
			max_degC: -2,
			freezing_degCd: null,
			thawing_degCd: null,
			aboveFreezing_h: null,
			precipitation_kg_m2: 3.2,
			snowfall_kg_m2: 4,
			landSnow_m: 0.25,
			wind_m_s: 5
		}
	]);
});

test('°F, inches and miles are converted', async () => {
	const { days } = await readAll(
		lines('date,temp_f,precip_in,snowfall_in,snow_depth_in,wind_mph', '2024-01-01,14,0.1,2,10,10')
	);
	expect(days[0]?.air_degC).toBeCloseTo(-10, 9);
	expect(days[0]?.precipitation_kg_m2).toBeCloseTo(2.54, 9);
	expect(days[0]?.snowfall_kg_m2).toBeCloseTo(5.08, 9);
	expect(days[0]?.landSnow_m).toBeCloseTo(0.254, 9);
	expect(days[0]?.wind_m_s).toBeCloseTo(4.4704, 9);
});

test('a measured water equivalent of snowfall goes before a depth, which fills its gaps', async () => {
	const { days } = await readAll(
		lines(
			'date,temp_c,snowfall_cm,snowfall_we_mm',
			'2024-01-01,-5,8,5.5',
			'2024-01-02,-5,8,',
			'2024-01-03,-5,,'
		)
	);
	expect(days.map(({ snowfall_kg_m2 }) => snowfall_kg_m2)).toEqual([5.5, 8, null]);
});

test('the lowest and highest temperature are enough, and no mean is made up for the day', async () => {
	const { days } = await readAll(lines('date,tmin_c,tmax_c', '2024-01-01,-9,-3'));
	expect(days[0]).toMatchObject({ air_degC: null, min_degC: -9, max_degC: -3 });
});

test('missing is null and a trace is nothing, in all the ways they are written', async () => {
	const missing = [
		'',
		'NA',
		'n/a',
		'NaN',
		'null',
		'M',
		'-',
		'--',
		'-999',
		'-999.9',
		'-9999',
		'9999'
	];
	const rows = missing.map(
		(text, index) => `2024-01-${String(index + 1).padStart(2, '0')},-5,${text}`
	);
	const { days } = await readAll(lines('date,temp_c,precip_mm', ...rows, '2024-01-20,-5,T'));
	expect(days.slice(0, -1).every((day) => day.precipitation_kg_m2 === null)).toBe(true);
	expect(days.length).toBe(missing.length + 1);
	expect(days.at(-1)?.precipitation_kg_m2).toBe(0);
});

test('−99 is missing as a temperature and 99.9 °F is not', async () => {
	const { days } = await readAll(
		lines('date,temp_f', '2024-01-01,-99', '2024-01-02,99.9', '2024-01-03,999.9', '2024-01-04,20')
	);
	expect(days.map(({ air_degC }) => air_degC?.toFixed(1))).toEqual(['37.7', '-6.7']);
});

const DATE_FORMS: readonly [name: string, cells: readonly string[]][] = [
	['ISO', ['2024-01-13', '2024-01-14']],
	['ISO with a time and Z', ['2024-01-13T00:00:00Z', '2024-01-14T00:00:00Z']],
	['ISO with an offset', ['2024-01-13T00:00-06:00', '2024-01-14T00:00-06:00']],
	['slashes, year first', ['2024/1/13', '2024/1/14']],
	['points, day first', ['13.1.2024', '14.1.2024']],
	['slashes, day first', ['13/01/2024', '14/01/2024']],
	['slashes, month first', ['1/13/2024', '1/14/2024']],
	['digits alone', ['20240113', '20240114']],
	['a month by name', ['13-Jan-2024', '14-Jan-2024']],
	['a month by name, spaced', ['13 January 2024', '14 January 2024']],
	['a month by name, first', ['"Jan 13, 2024"', '"Jan 14, 2024"']],
	['a weekday before it', ['"Sat, 13 Jan 2024"', '"Sun, 14 Jan 2024"']],
	['seconds since 1970', ['1705104000', '1705190400']],
	['milliseconds since 1970', ['1705104000000', '1705190400000']]
];

test.each(DATE_FORMS)('dates are read from %s', async (_, cells) => {
	const { days, rejected } = await readAll(
		lines('date,temp_c', ...cells.map((cell) => `${cell},-5`))
	);
	expect(rejected).toEqual([]);
	expect(days.map(({ on }) => on)).toEqual(['2024-01-13', '2024-01-14']);
});

test('a heading that spells the order of day and month decides it', async () => {
	const { days } = await readAll(
		lines('date (mm/dd/yyyy),temp_c', '02/01/2024,-5', '02/02/2024,-6')
	);
	expect(days.map(({ on }) => on)).toEqual(['2024-02-01', '2024-02-02']);
});

test('an order of day and month chosen by hand decides it, as a column or as an option', async () => {
	const content = lines('date,temp_c', '01/02/2024,-5', '02/02/2024,-6');
	const columns: ColumnGuess[] = [
		{ index: 0, header: 'date', role: 'date', unit: 'd/m/Y', sample: [], why: '' }
	];
	const byColumn = await readAll(content, { ...HERE, columns });
	const byOption = await readAll(content, { ...HERE, dateForm: 'm/d/Y' });
	expect(byColumn.days.map(({ on }) => on)).toEqual(['2024-02-01', '2024-02-02']);
	expect(byOption.days.map(({ on }) => on)).toEqual(['2024-01-02', '2024-02-02']);
});

test('year, month and day may stand in three columns, and the hour in a fourth', async () => {
	const { hours } = await readAll(
		lines('year,month,day,hour,temp_c', '2024,1,5,0,-5', '2024,1,5,1,-6', '2024,1,5,24,-7')
	);
	expect(hours.map(({ at_s }) => at_s)).toEqual(
		['2024-01-05T06:00Z', '2024-01-05T07:00Z', '2024-01-06T06:00Z'].map(at)
	);
});

test('day and clock may stand in two columns, the clock in many ways', async () => {
	for (const [one, two] of [
		['09:00', '13:00'],
		['9:00 AM', '1:00 PM'],
		['0900', '1300'],
		['9', '13'],
		['09.00', '13.00'],
		['09:00:00', '13:00:00']
	]) {
		const { hours } = await readAll(
			lines('date;time;temp_c', `5.1.2024;${one};-5`, '5.1.2024;12:00;-5', `5.1.2024;${two};-6`)
		);
		expect(hours.map(({ at_s }) => at_s)).toEqual(
			['2024-01-05T15:00Z', '2024-01-05T18:00Z', '2024-01-05T19:00Z'].map(at)
		);
	}
});

test('times without a zone are the lake’s own, an offset or a UTC heading is honoured', async () => {
	const rows = ['2024-01-05 00:00', '2024-01-05 01:00'];
	const start = async (header: string, suffix: string) =>
		(await readAll(lines(`${header},temp_c`, ...rows.map((row) => `${row}${suffix},-5`)))).hours[0]
			?.at_s;
	expect(await start('time', '')).toBe(at('2024-01-05T06:00Z'));
	expect(await start('time', '+02:00')).toBe(at('2024-01-04T22:00Z'));
	expect(await start('time', 'Z')).toBe(at('2024-01-05T00:00Z'));
	expect(await start('time (UTC)', '')).toBe(at('2024-01-05T00:00Z'));
});

test('a time zone column of UTC is honoured', async () => {
	const { hours } = await readAll(
		lines('date,time,time zone,temp_c', '2024-01-05,00:00,UTC,-5', '2024-01-05,01:00,UTC,-5')
	);
	expect(hours[0]?.at_s).toBe(at('2024-01-05T00:00Z'));
});

test('local standard time keeps its offset in summer', async () => {
	const { hours } = await readAll(
		lines(
			'Date/Time (LST),temp_c',
			'2024-03-10 02:00,-5',
			'2024-07-01 00:00,15',
			'2024-07-01 01:00,15'
		)
	);
	expect(hours[0]?.at_s).toBe(at('2024-03-10T08:00Z'));
	expect(hours[1]?.at_s).toBe(at('2024-07-01T06:00Z'));
});

const DOUBLED = ['00:00', '01:00', '01:00', '02:00'].map(
	(clock, index) => `2024-11-03 ${clock},${-index}`
);
const DOUBLED_AT = ['05:00', '06:00', '07:00', '08:00'].map((clock) => at(`2024-11-03T${clock}Z`));

test('the hour that comes twice in autumn is two hours, the first offset first', async () => {
	const { hours, rejected } = await readAll(lines('time,temp_c', ...DOUBLED));
	expect(rejected).toEqual([]);
	expect(hours.map(({ at_s, air_degC }) => [at_s, air_degC])).toEqual(
		DOUBLED_AT.map((at_s, index) => [at_s, 0 - index])
	);
});

test('the doubled hour of a record with the newest row first is read the other way round', async () => {
	const { hours } = await readAll(lines('time,temp_c', ...DOUBLED.toReversed()));
	expect(hours.toReversed().map(({ at_s, air_degC }) => [at_s, air_degC])).toEqual(
		DOUBLED_AT.map((at_s, index) => [at_s, 0 - index])
	);
});

test('a time within the hour belongs to the hour that it falls in', async () => {
	const { hours } = await readAll(
		lines('time,temp_c', '2024-01-05 00:53,-5', '2024-01-05 01:53,-6')
	);
	expect(hours.map(({ at_s }) => at_s)).toEqual(['2024-01-05T06:00Z', '2024-01-05T07:00Z'].map(at));
});

test('hours start on the clock of a lake with a half-hour offset', async () => {
	const { hours } = await readAll(
		lines('time,temp_c', '2024-01-05 00:00,-5', '2024-01-05 01:00,-6'),
		{
			timeZone: 'America/St_Johns'
		}
	);
	expect(hours[0]?.at_s).toBe(at('2024-01-05T03:30Z'));
});

test('rows within an hour are averaged and summed, and a sum with a part missing is unknown', async () => {
	const rows = [
		'00:00,-4,0.1',
		'00:15,-5,0.2',
		'00:30,-6,0.3',
		'00:45,-7,0.4',
		'01:00,-7,1',
		'01:15,-8,1',
		'01:45,-9,1'
	];
	const { hours } = await readAll(
		lines('time,temp_c,rain_mm', ...rows.map((row) => `2024-01-05 ${row}`))
	);
	expect(hours.map(({ air_degC }) => air_degC)).toEqual([-5.5, -8]);
	expect(hours[0]?.precipitation_kg_m2).toBeCloseTo(1, 12);
	expect(hours[1]?.precipitation_kg_m2).toBeNull();
});

test('a row every three hours stands for the hours up to the next, its precipitation spread', async () => {
	const content = lines(
		'time,temp_c,precip_mm',
		...['00', '03', '06'].map((hour) => `2024-01-05 ${hour}:00,-${hour},3`)
	);
	const { hours } = await readAll(content);
	expect(hours.map(({ air_degC }) => Math.abs(air_degC ?? NaN))).toEqual([
		0, 0, 0, 3, 3, 3, 6, 6, 6
	]);
	expect(hours.every((hour) => hour.precipitation_kg_m2 === 1)).toBe(true);
	expect(previewCsv(toBytes(content), HERE).warnings.join()).toMatch(/the rows are 3 hours apart/);
});

test('a rate of rain becomes an amount by the length of the step', async () => {
	const rows = ['00:00,-4,6', '00:30,-5,2', '01:00,-5,2', '01:30,-5,2'].map(
		(row) => `2024-01-05 ${row}`
	);
	const { hours } = await readAll(lines('time,temp_c,precip (mm/h)', ...rows));
	expect(hours.map((hour) => hour.precipitation_kg_m2)).toEqual([4, 2]);
});

test('a daily stamp at local midnight written in UTC is the local day', async () => {
	const { days } = await readAll(
		lines('time,temp_c', '2024-01-04T22:00:00Z,-5', '2024-01-05T22:00:00Z,-6'),
		{ timeZone: 'Europe/Helsinki' }
	);
	expect(days.map(({ on }) => on)).toEqual(['2024-01-05', '2024-01-06']);
});

test('days out of order are taken, each on its own date', async () => {
	const { days, rejected } = await readAll(
		lines('date,temp_c', '2024-01-03,-3', '2024-01-01,-1', '2024-01-02,-2')
	);
	expect(rejected).toEqual([]);
	expect(days.map(({ on, air_degC }) => [on, air_degC])).toEqual([
		['2024-01-03', -3],
		['2024-01-01', -1],
		['2024-01-02', -2]
	]);
});

test('a later line for the same day keeps what only the earlier one has', async () => {
	const { days, rejected } = await readAll(
		lines('date,temp_c,precip_mm', '2024-01-01,-5,', '2024-01-02,-5,1', '2024-01-01,,2')
	);
	expect(rejected).toEqual([]);
	expect(days.find(({ on }) => on === '2024-01-01')).toMatchObject({
		air_degC: -5,
		precipitation_kg_m2: 2
	});
});

test('lines without a value are one gap in the list, with their first and last line', async () => {
	const { days, rejected } = await readAll(
		lines('date,temp_c', ...daily(9, (on, index) => `${on},${index < 3 || index > 6 ? -5 : ''}`))
	);
	expect(days.length).toBe(5);
	expect(rejected).toEqual([
		{ line: 5, reason: 'lines 5 to 8 have no value in any column that is used: a gap' }
	]);
});

test('notes above the headings are skipped, a thousand lines too, and lines are counted with them', async () => {
	const notes = Array.from({ length: 1000 }, (_, index) => `# note ${index}, made up`);
	const { days, rejected } = await readAll(
		lines(...notes, '', 'date,temp_c', '2024-01-01,-5', '2024-01-02,x')
	);
	expect(days.length).toBe(1);
	expect(rejected[0]?.line).toBe(1004);
});

test('a line of units below the headings gives the units', async () => {
	const content = lines(
		'date;temp;precip;wind',
		'(yyyy-mm-dd);°F;in;kn',
		'2024-01-01;14;0.1;10',
		'2024-01-02;5;0;10'
	);
	expect(roles(content)).toEqual(['date Y-m-d', 'air °F', 'precipitation in', 'wind kn']);
	expect((await readAll(content)).days[0]?.air_degC).toBeCloseTo(-10, 9);
});

test('decimal commas are read between semicolons, tabs and quotation marks', async () => {
	for (const rows of [
		['date;temp_c;precip_mm', '2024-01-01;-5,25;0,5'],
		['date\ttemp_c\tprecip_mm', '2024-01-01\t-5,25\t0,5'],
		['date,temp_c,precip_mm', '2024-01-01,"-5,25","0,5"'],
		['date|temp_c|precip_mm', '2024-01-01|-5,25|0,5'],
		['date;temp_c', '2024-01-01;-5,25']
	]) {
		const { days } = await readAll(lines(...rows));
		expect(days[0]?.air_degC).toBe(-5.25);
	}
});

test('line ends of every kind are line ends', async () => {
	for (const end of ['\n', '\r\n', '\r']) {
		const content = ['date,temp_c', '2024-01-01,-5', '2024-01-02,x', '2024-01-03,-6'].join(end);
		const { days, rejected } = await readAll(content, HERE, 7);
		expect(days.map(({ air_degC }) => air_degC)).toEqual([-5, -6]);
		expect(rejected[0]?.line).toBe(3);
	}
});

test('UTF-8, UTF-16 and Latin-1 are told apart, with a mark or without', async () => {
	const text = lines('date;température moyenne (°C)', '2024-01-01;-5,5', '2024-01-02;\u22126,5');
	const utf16 = Buffer.from(text, 'utf16le');
	const latin1 = Buffer.from(text.replace('\u2212', '-'), 'latin1');
	const marked = (mark: readonly number[], bytes: Uint8Array) =>
		Buffer.concat([Uint8Array.from(mark), bytes]);
	const files: [encoding: string, bytes: Uint8Array][] = [
		['utf-8', Buffer.from(text)],
		['utf-8', marked([0xef, 0xbb, 0xbf], Buffer.from(text))],
		['utf-16le', marked([0xff, 0xfe], utf16)],
		['utf-16le', utf16],
		['utf-16be', marked([0xfe, 0xff], Buffer.from(utf16).swap16())],
		['utf-16be', Buffer.from(utf16).swap16()],
		['windows-1252', latin1]
	];
	for (const [encoding, bytes] of files) {
		expect(previewCsv(bytes, HERE).encoding).toBe(encoding);
		expect((await readAll(bytes, HERE, 5)).days.map(({ air_degC }) => air_degC)).toEqual([
			-5.5, -6.5
		]);
	}
});

const unitless = (rows: readonly string[]) =>
	previewCsv(toBytes(lines('date,temp', ...rows)), HERE);

test('a unit that no heading gives is told by the values, or assumed aloud', () => {
	const hot = unitless(daily(60, (on, index) => `${on},${10 + index}`));
	expect(hot.columns[1]?.unit).toBe('°F');
	expect(hot.warnings.join()).toMatch(/"temp" gives no unit; values up to 69 can only be °F/);
	const kelvin = unitless(daily(5, (on, index) => `${on},${265 + index}`));
	expect(kelvin.columns[1]?.unit).toBe('K');
	const cold = unitless(daily(5, (on, index) => `${on},${-index}`));
	expect(cold.columns[1]?.unit).toBe('°C');
	expect(cold.warnings.join()).toMatch(
		/"temp" gives no unit; °C is assumed, choose °F if that is wrong/
	);
});

test('a table without headings is a date and a temperature, said aloud, or nothing', async () => {
	const two = ['2024-01-01;-5', '2024-01-02;-6'];
	expect((await readAll(lines(...two))).days.map(({ air_degC }) => air_degC)).toEqual([-5, -6]);
	expect(previewCsv(toBytes(lines(...two)), HERE).warnings.join()).toMatch(/there are no headings/);
	const three = await readAll(lines(...two.map((row) => `${row};3`)));
	expect(three.rejected[0]?.reason).toMatch(/no column was recognised as air temperature/);
});

test('a line of dashes below the headings is passed over', async () => {
	const { days } = await readAll(lines('date,temp_c', '----------,------', '2024-01-01,-5'));
	expect(days.length).toBe(1);
});

test('the name of a time zone in a heading is not taken for granted', () => {
	const content = lines('time (EST),temp_c', '2024-01-01 00:00,-5', '2024-01-01 01:00,-5');
	expect(previewCsv(toBytes(content), HERE).warnings.join()).toMatch(
		/names a time zone, but is read/
	);
});

test('a column whose unit would be a guess by ten is left out aloud', () => {
	const content = lines('date,temp_c,snowfall,snow depth,wind speed', '2024-01-01,-5,3,20,4');
	const preview = previewCsv(toBytes(content), HERE);
	expect(roles(content)).toEqual(['date Y-m-d', 'air °C', 'ignore', 'ignore', 'ignore']);
	expect(preview.warnings.length).toBe(3);
	expect(preview.warnings[0]).toMatch(
		/"snowfall" gives no unit for snowfall and is left out; choose/
	);
});

test('a column called snow is what fell where the depth has a column too, else it is left out', () => {
	expect(roles(lines('DATE,TAVG (°C),SNOW (mm),SNWD (mm)', '2024-01-01,-5,30,200'))).toEqual([
		'date Y-m-d',
		'air °C',
		'snowfall mm',
		'landSnow mm'
	]);
	expect(roles(lines('DATE,TAVG (°C),SNOW (mm)', '2024-01-01,-5,30'))[2]).toBe('ignore');
});

test('rain alone and snowfall make the precipitation together', async () => {
	const { days } = await readAll(
		lines('date,temp_c,total rain (mm),total snow (cm)', '2024-01-01,-1,2,5', '2024-01-02,-1,2,')
	);
	expect(days.map((day) => day.precipitation_kg_m2)).toEqual([7, null]);
});

test('corrections of role and unit are used, and the guess for that role steps back', async () => {
	const content = lines('date,temp_c,hut temperature', '2024-01-01,-5,14', '2024-01-02,-6,5');
	const columns: ColumnGuess[] = [
		{ index: 2, header: '', role: 'air', unit: '°F', sample: [], why: '' }
	];
	const options = { ...HERE, columns };
	expect(roles(content, options)).toEqual(['date Y-m-d', 'ignore', 'air °F']);
	expect((await readAll(content, options)).days.map(({ air_degC }) => air_degC)).toEqual([
		-10, -15
	]);
});

test('a unit that does not exist, chosen by hand, is refused with those that do', async () => {
	const columns: ColumnGuess[] = [
		{ index: 1, header: '', role: 'air', unit: 'constructor', sample: [], why: '' }
	];
	const { rejected } = await readAll(lines('date,temp_c', '2024-01-01,-5'), { ...HERE, columns });
	expect(rejected[0]?.reason).toMatch(/"constructor" is not a unit of.*choose one of °C, °F, K/);
});

test('two columns chosen for the same are refused', async () => {
	const columns = [1, 2].map((index): ColumnGuess => ({
		index,
		header: '',
		role: 'air',
		unit: '°C',
		sample: [],
		why: ''
	}));
	const { rejected } = await readAll(lines('date,a,b', '2024-01-01,-5,-6'), { ...HERE, columns });
	expect(rejected[0]?.reason).toMatch(
		/columns "a" and "b" are both chosen as the air temperature; set one/
	);
});

test('the guess handed back does not silence a doubt, the other unit does', async () => {
	const content = lines('date,temp_c', ...daily(60, (on, index) => `${on},${index}`));
	const columns: ColumnGuess[] = [
		{ index: 1, header: '', role: 'air', unit: '°F', sample: [], why: '' }
	];
	const guessed = previewCsv(toBytes(content), HERE).columns;
	expect((await readAll(content, { ...HERE, columns: guessed })).isFatal).toBe(true);
	expect((await readAll(content, { ...HERE, columns })).days.length).toBe(60);
});

test('the preview handed back as corrections changes nothing', async () => {
	const content = lines(
		'date,clock,temp_c,tmin,precip_mm,snowfall_cm,note',
		...['22:00', '23:00'].map((clock) => `13/01/2024,${clock},-5,-6,1,1,x`)
	);
	const { columns } = previewCsv(toBytes(content), HERE);
	const again = previewCsv(toBytes(content), { ...HERE, columns });
	expect(again.ok).toBe(true);
	expect(again.columns.map(({ role, unit }) => [role, unit])).toEqual(
		columns.map(({ role, unit }) => [role, unit])
	);
	expect(await readAll(content, { ...HERE, columns })).toEqual(await readAll(content));
});

test('a preview shows the first ten rows, samples and the reason for each guess', () => {
	const preview = previewCsv(
		toBytes(lines('note', 'date,temp_c,humidity (%)', ...daily(20, (on) => `${on},-5,80`))),
		HERE
	);
	expect(preview).toMatchObject({
		ok: true,
		headerLine: 2,
		step: 'daily',
		dateForm: 'Y-m-d',
		delimiter: ','
	});
	expect(preview.rows.length).toBe(10);
	expect(preview.columns[1]).toEqual({
		index: 1,
		header: 'temp_c',
		role: 'air',
		unit: '°C',
		sample: ['-5', '-5', '-5', '-5', '-5'],
		why: 'by its heading'
	});
	expect(preview.columns[2]?.role).toBe('ignore');
});

test('a head cut inside a line is read as far as its last whole line', () => {
	const bytes = toBytes(lines('date,temp_c', ...daily(6000, (on) => `${on},-5.25`)));
	const preview = previewCsv(bytes.subarray(0, 65_536), HERE);
	expect(preview.ok).toBe(true);
	expect(preview.warnings).toEqual([]);
});

test('batches hold at most 500 rows, count the bytes, and let other work run between them', async () => {
	const hours = Array.from({ length: 5000 }, (_, index) =>
		new Date(index * 3_600_000).toISOString()
	);
	const bytes = toBytes(lines('time,temp_c', ...hours.map((hour) => `${hour},-5`)));
	let turns = 0;
	let isDone = false;
	const count = () => {
		turns += 1;
		if (!isDone) setImmediate(count);
	};
	setImmediate(count);
	const read = await readAll(bytes, HERE, bytes.length);
	isDone = true;
	expect(read.hours.length).toBe(5000);
	expect(read.largestBatch).toBeLessThanOrEqual(500);
	expect(read.batches).toBeGreaterThanOrEqual(10);
	expect(turns).toBeGreaterThanOrEqual(10);
	expect(read.bytesRead).toBe(bytes.length);
});

test('the pieces that a file comes in make no difference', async () => {
	const content = lines(
		'name,made up',
		'date;temp_c;note',
		...daily(300, (on, index) => `${on};-${index % 9},5;"a ""b""; ü ${index}"`)
	).replaceAll('\n', '\r\n');
	const whole = await readAll(content);
	expect(whole.days.length).toBe(300);
	for (const size of [1, 3, 1000]) {
		expect((await readAll(content, HERE, size)).days).toEqual(whole.days);
	}
});

test('a reader that stops early lets go of its source', async () => {
	let isReleased = false;
	async function* source() {
		try {
			yield* pieces(toBytes(lines('date,temp_c', ...daily(9000, (on) => `${on},-5`))), 5000);
		} finally {
			isReleased = true;
		}
	}
	for await (const { days } of readCsv(source(), HERE)) {
		expect(days.length).toBeGreaterThan(0);
		break;
	}
	expect(isReleased).toBe(true);
});
