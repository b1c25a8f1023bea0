import { expect, test } from 'vitest';
import { previewCsv } from '#lib/server/weather/csv/preview.ts';
import { daily, HERE, lines, readAll, toBytes } from './read-all.ts';

interface Refused {
	name: string;
	content: string | Uint8Array;
	line: number;
	reason: RegExp;
}

/** Files of which nothing can be used: the line that says so, and what it says. */
const REFUSED: readonly Refused[] = [
	{ name: 'an empty file', content: '', line: 1, reason: /the file is empty; choose/ },
	{ name: 'blank lines', content: '\n  \n\n', line: 1, reason: /the file is empty; choose/ },
	{
		name: 'headings alone',
		content: 'date,temp_c,precip_mm\n',
		line: 1,
		reason: /headings but no rows below them; choose/
	},
	{
		name: 'headings and units alone',
		content: lines('notes', 'date,temp,precip', 'yyyy-mm-dd,°C,mm'),
		line: 2,
		reason: /headings but no rows/
	},
	{
		name: 'columns divided by blanks',
		content: lines('date temp_c', ...daily(5, (on) => `${on} -5.2`)),
		line: 1,
		reason: /no columns were found: no line is divided by commas, semicolons, tabs/
	},
	{
		name: 'columns divided by a delimiter nobody uses',
		content: lines('date~temp_c', ...daily(5, (on) => `${on}~-5.2`)),
		line: 1,
		reason: /no columns were found.*save the table as CSV/
	},
	{
		name: 'dates in two forms',
		content: lines('date,temp_c', '2024-01-01,-5', '2024-01-02,-5', '03.01.2024,-6'),
		line: 4,
		reason: /more than one form: "2024-01-01" on line 2, "03.01.2024" on line 4; write all/
	},
	{
		name: 'day first and month first mixed',
		content: lines('date,temp_c', '13/01/2024,-5', '01/14/2024,-6'),
		line: 3,
		reason: /more than one form: "13\/01\/2024" on line 2, "01\/14\/2024" on line 3/
	},
	{
		name: 'days and months that no line tells apart',
		content: lines('date,temp_c', '01/02/2024,-5', '02/02/2024,-6'),
		line: 2,
		reason: /"01\/02\/2024" can be day before month or month before day.*choose d\/m\/Y or m\/d\/Y/
	},
	{
		name: 'the day before the month behind the year',
		content: lines('date,temp_c', ...daily(31, (on) => `2024-${on.slice(8)}-01,-5`)),
		line: 2,
		reason: /the dates have the day before the month behind the year; write them as/
	},
	{
		name: 'commas that can stand between thousands',
		content: lines('date,temp_c,snow_depth_mm', ...daily(4, (on) => `${on},-5,"1,200"`)),
		line: 2,
		reason: /can be decimal marks or stand between thousands; write plain numbers/
	},
	{
		name: 'a web page',
		content: '<!DOCTYPE html><html><body><table><tr><td>2024-01-01</td></tr></table></body></html>',
		line: 1,
		reason: /web page \(HTML\), not a table; download the CSV/
	},
	{ name: 'XML', content: '<?xml version="1.0"?><a/>', line: 1, reason: /XML, not a table/ },
	{
		name: 'JSON',
		content: '{"daily":{"time":["2024-01-01"]}}',
		line: 1,
		reason: /JSON, not a table/
	},
	{ name: 'a JSON list', content: '[{"date":"2024-01-01"}]', line: 1, reason: /JSON, not a table/ },
	{
		name: 'a workbook',
		content: Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 6, 0, 8, 0),
		line: 1,
		reason: /Excel workbook or a zip archive.*save it as CSV/
	},
	{
		name: 'binary data',
		content: Uint8Array.from({ length: 5000 }, (_, at) => (at * 7919) % 256),
		line: 1,
		reason: /binary file, not a table of text/
	},
	{
		name: 'a table that ends in zero bytes',
		content: `date,temp_c\n2024-01-01,-5\n${'\0'.repeat(300)}`,
		line: 1,
		reason: /binary file/
	},
	{
		name: 'a °C column that is °F, by its snow',
		content: lines(
			'date,temp_c,precip_mm,snowfall_cm',
			...daily(60, (on, at) => `${on},${20 + (at % 13)},1.5,${at % 3 ? 2 : 0}`)
		),
		line: 6,
		reason: /"temp_c" is taken as °C, but snow falls on days warmer than 8 °C.*choose °F for it/
	},
	{
		name: 'a °C column that is °F, by its heat',
		content: lines('date,temp_c', ...daily(60, (on, at) => `${on},${25 + at}`)),
		line: 25,
		reason: /"temp_c" is taken as °C, but has values that can only be °F; choose °F for it/
	},
	{
		name: 'a °F column that is °C, by a year without summer',
		content: lines(
			'date,temp_f',
			...daily(366, (on, at) => `${on},${(5 - 20 * Math.cos(at / 58)).toFixed(1)}`)
		),
		line: 367,
		reason: /"temp_f" is taken as °F, but no day in a year is warmer than 8 °C.*choose °C for it/
	},
	{
		name: 'NaN for every temperature',
		content: lines('date,temp_c', ...daily(4, (on) => `${on},NaN`)),
		line: 1,
		reason: /no row has a temperature; choose/
	},
	{
		name: 'every value missing',
		content: lines('date,temp_c,precip_mm', ...daily(4, (on) => `${on},-999,NA`)),
		line: 1,
		reason: /no row has a temperature/
	},
	{
		name: 'precipitation without a single temperature',
		content: lines('date,temp_c,precip_mm', ...daily(4, (on) => `${on},,2`)),
		line: 1,
		reason: /no row has a temperature/
	},
	{
		name: 'a million columns',
		content: `${Array.from({ length: 1e6 }, (_, at) => `c${at}`).join(',')}\n`,
		line: 1,
		reason: /the first line has more than 1000 columns/
	},
	{
		name: 'two thousand columns',
		content: `${`c,`.repeat(2000)}\n${`1,`.repeat(2000)}\n`,
		line: 1,
		reason: /2001 columns, more than 1000; keep the date and the weather/
	},
	{
		name: 'a line of 50 MB',
		content: new Uint8Array(50e6).fill(0x78),
		line: 1,
		reason: /the first line is longer than 65,536 characters/
	},
	{
		name: 'a quotation mark that is never closed',
		content: lines(
			'date,temp_c,note',
			...daily(5, (on, at) => (at === 2 ? `${on},-5,"open` : `${on},-5,fine`))
		),
		line: 4,
		reason: /a quotation mark is opened and never closed; close or remove it/
	},
	{
		name: 'two temperature columns',
		content: lines('date,temperature_c,air temp_c', ...daily(4, (on) => `${on},-5,-6`)),
		line: 1,
		reason: /"temperature_c" and "air temp_c" can both be the air temperature; choose one/
	},
	{
		name: 'no date column',
		content: lines('name,temp_c', 'a,-5', 'b,-6'),
		line: 1,
		reason: /no column was recognised as the date among "name, temp_c"; name one date/
	},
	{
		name: 'no temperature column',
		content: lines('date,precip_mm', ...daily(4, (on) => `${on},2`)),
		line: 1,
		reason: /no column was recognised as air temperature; name one temp_c/
	},
	{
		name: 'the lowest temperature alone',
		content: lines('date,tmin_c', ...daily(4, (on) => `${on},-9`)),
		line: 1,
		reason: /only one end of the day's temperatures is there; add a mean/
	},
	{
		name: 'serial numbers of a spreadsheet for dates',
		content: lines('date,temp_c', '45292,-5', '45293,-6', '45294,-7'),
		line: 2,
		reason: /"45292" looks like the serial number of a day in a spreadsheet; give the column/
	},
	{
		name: 'years of two digits',
		content: lines('date,temp_c', '05.01.24,-5', '06.01.24,-5'),
		line: 2,
		reason: /"05.01.24" has a year of two digits.*write years with four digits/
	},
	{
		name: 'decimal commas between commas',
		content: lines('date,temp_c,precip_mm', ...daily(5, (on) => `${on},-5,2,0,3`)),
		line: 2,
		reason: /5 values under 3 headings; if the comma is the decimal mark too, save.*semicolons/
	},
	{
		name: 'decimal points and commas mixed',
		content: lines('date;temp_c', ...daily(6, (on, at) => `${on};-5${at % 2 ? ',' : '.'}2`)),
		line: 3,
		reason: /some numbers have "\." and some "," as their decimal mark/
	},
	{
		name: 'rows a week apart',
		content: lines('date,temp_c', ...daily(60, (on) => `${on},-5`).filter((_, at) => at % 7 === 0)),
		line: 2,
		reason: /the rows are 7 days apart; one row a day or an hour is needed/
	},
	{
		name: 'rows twelve hours apart',
		content: lines('time,temp_c', ...daily(4, (on) => `${on} 00:00,-5\n${on} 12:00,-3`)),
		line: 2,
		reason: /the rows are 12 hours apart; one row a day, an hour or at most every 6 hours/
	},
	{
		name: 'hours without a time of day',
		content: lines('date,temp_c', ...daily(3, (on) => Array(24).fill(`${on},-5`).join('\n'))),
		line: 2,
		reason: /several rows a day and no time of day; add a column with the time/
	},
	{
		name: 'two stations in one file',
		content: lines(
			'station,date,temp_c',
			...daily(4, (on, at) => `${at < 2 ? 'A' : 'B'},${on},-5`)
		),
		line: 4,
		reason: /the station is "B" here and "A" on the first row; keep the rows of one station/
	},
	{
		name: 'a name of a time zone behind the time',
		content: lines('time,temp_c', '2024-01-01 00:00 EST,-5', '2024-01-01 01:00 EST,-5'),
		line: 2,
		reason: /"EST" is not an offset from UTC; write it as \+02:00/
	},
	{
		name: 'a unit of temperature that nobody uses',
		content: lines('date,temp (deg R)', '2024-01-01,470', '2024-01-02,471'),
		line: 1,
		reason: /the unit "deg R" is not known; choose its unit/
	},
	{
		name: 'tenths of degrees without a word about it',
		content: lines('date,tavg', ...daily(30, (on, at) => `${on},${-250 + at * 20}`)),
		line: 1,
		reason: /330 is neither °C nor °F; choose its unit, perhaps 0\.1 °C/
	},
	{
		name: 'one slip of a temperature, in the second of two columns',
		content: lines('date,tmin,tmax', '2024-01-01,-3,1', '2024-01-02,-4,200', '2024-01-03,-5,2'),
		line: 1,
		reason: /column "tmax": 200 is neither °C nor °F; .*, or mend line 3$/
	},
	{
		name: 'no unit of temperature beside inches',
		content: lines('date,temp,precip_in', ...daily(4, (on) => `${on},25,0.1`)),
		line: 1,
		reason: /"temp" gives no unit beside columns in inches; choose °C or °F/
	},
	{
		name: 'a heading fewer than columns',
		content: lines('temp_c,precip_mm', ...daily(4, (on) => `${on},-5,1`)),
		line: 2,
		reason: /3 values under 2 headings/
	},
	{
		name: 'rows of which none can be read',
		content: lines('date,temp_c', ...daily(4, (on) => `${on},warm`)),
		line: 2,
		reason: /no row can be used; the first one: column "temp_c": "warm" is not a number/
	}
];

test.each(REFUSED)('nothing is taken from $name, and the message says why', async (file) => {
	const read = await readAll(file.content, HERE, 1_000_000);
	expect(read.isFatal).toBe(true);
	expect(read.days).toEqual([]);
	expect(read.hours).toEqual([]);
	expect(read.rejected[0]?.line).toBe(file.line);
	expect(read.rejected[0]?.reason).toMatch(file.reason);
});

test.each(REFUSED)('a preview of $name shows the same message', ({ content, line, reason }) => {
	const preview = previewCsv(toBytes(content).subarray(0, 65_536), HERE);
	expect(preview.ok).toBe(false);
	expect(preview.problems[0]?.line).toBe(line);
	expect(preview.problems[0]?.reason).toMatch(reason);
});

interface Partly {
	name: string;
	rows: readonly string[];
	/** Rows taken. */
	taken: number;
	line: number;
	reason: RegExp;
}

/** Files of which single lines can't be used. */
const PARTLY: readonly Partly[] = [
	{
		name: '30 February',
		rows: ['date,temp_c', '2024-02-28,-5', '2024-02-30,-5'],
		taken: 1,
		line: 3,
		reason: /"2024-02-30": there is no such day in the calendar/
	},
	{
		name: 'a thirteenth month',
		rows: ['date,temp_c', '2024-13-01,-5', '2024-01-02,-5'],
		taken: 1,
		line: 2,
		reason: /there is no such day/
	},
	{
		name: 'the year 1',
		rows: ['date,temp_c', '0001-01-01,-5', '2024-01-02,-5'],
		taken: 1,
		line: 2,
		reason: /the year 1 is outside 1700 to 2100/
	},
	{
		name: 'the year 9999',
		rows: ['date,temp_c', '2024-01-02,-5', '9999-12-31,-5'],
		taken: 1,
		line: 3,
		reason: /the year 9999 is outside/
	},
	{
		name: 'hour 25',
		rows: ['date,hour,temp_c', '2024-01-01,22,-5', '2024-01-01,23,-5', '2024-01-01,25,-5'],
		taken: 2,
		line: 4,
		reason: /"25" is not a time of day; hours go from 00:00 to 24:00/
	},
	{
		name: 'negative precipitation',
		rows: ['date,temp_c,precip_mm', '2024-01-01,-5,-1', '2024-01-02,-5,1'],
		taken: 1,
		line: 2,
		reason: /"precip_mm": "-1" \(mm\) is not from 0 to 500 mm.*if it stands for "none" write 0/
	},
	{
		name: 'a lowest above the highest temperature',
		rows: ['date,tmin_c,tmax_c', '2024-01-01,-2,-5', '2024-01-02,-6,1'],
		taken: 1,
		line: 2,
		reason: /lowest temperature −2 °C is above the highest −5 °C/
	},
	{
		name: 'a mean above the highest temperature',
		rows: ['date,tmean_c,tmin_c,tmax_c', '2024-01-01,5,-9,-2', '2024-01-02,-6,-8,1'],
		taken: 1,
		line: 2,
		reason: /mean temperature 5 °C is above the highest −2 °C/
	},
	{
		name: 'a mean below the lowest temperature',
		rows: ['date,tmean_c,tmin_c,tmax_c', '2024-01-01,-12,-9,-2', '2024-01-02,-6,-8,1'],
		taken: 1,
		line: 2,
		reason: /mean temperature −12 °C is below the lowest −9 °C/
	},
	{
		name: 'a temperature that no place has',
		rows: ['date,temp_c', '2024-01-01,-88', '2024-01-02,-6'],
		taken: 1,
		line: 2,
		reason: /"-88" \(°C\) is not from −75 to 60 °C/
	},
	{
		name: 'twelve metres of snow on land',
		rows: ['date,temp_c,snow_depth_cm', '2024-01-01,-8,1200', '2024-01-02,-6,12'],
		taken: 1,
		line: 2,
		reason: /"snow_depth_cm": "1200" \(cm\) is not from 0 to 10 m of snow/
	},
	{
		name: 'a mark between thousands',
		rows: ['date,temp_c,precip_mm', '2024-01-01,-5,"1,234.5"', '2024-01-02,-5,3.5'],
		taken: 1,
		line: 2,
		reason: /"1,234\.5" has a mark between thousands/
	},
	{
		name: 'one decimal comma among points',
		rows: ['date;temp_c', ...daily(9, (on, at) => `${on};-5${at === 4 ? ',' : '.'}25`)],
		taken: 8,
		line: 6,
		reason: /"-5,25" has "," as its decimal mark where the rest of the file has "\."/
	},
	{
		name: 'a word for a number',
		rows: ['date,temp_c', '2024-01-01,mild', '2024-01-02,-6'],
		taken: 1,
		line: 2,
		reason: /"mild" is not a number; correct it or leave it empty/
	},
	{
		name: 'a trace for a temperature',
		rows: ['date,temp_c', '2024-01-01,T', '2024-01-02,-6'],
		taken: 1,
		line: 2,
		reason: /"T" is not a number/
	},
	{
		name: 'an infinite number',
		rows: ['date,temp_c', '2024-01-01,-Infinity', '2024-01-02,1e999', '2024-01-03,-6'],
		taken: 1,
		line: 2,
		reason: /is not a number/
	},
	{
		name: 'a zero byte',
		rows: ['date,temp_c', ...daily(40, (on, at) => `${on},-5${at === 3 ? '\0' : ''}`)],
		taken: 39,
		line: 5,
		reason: /is not a number/
	},
	{
		name: 'the headings again in the middle',
		rows: ['date,temp_c', '2024-01-01,-5', 'date,temp_c', '2024-01-02,-6'],
		taken: 2,
		line: 3,
		reason: /the headings stand here again/
	},
	{
		name: 'a row of means at the end',
		rows: ['date,temp_c', '2024-01-01,-5', '2024-01-02,-6', 'Mean,-5.5'],
		taken: 2,
		line: 4,
		reason: /"Mean" is not a date written as Y-m-d/
	},
	{
		name: 'a note at the end',
		rows: ['date,temp_c', '2024-01-01,-5', '2024-01-02,-6', '2 rows'],
		taken: 2,
		line: 4,
		reason: /"2 rows" is not a row of the table/
	},
	{
		name: 'a line that was cut off',
		rows: ['date,temp_c,precip_mm', '2024-01-01,-5,1', '2024-01-02,-1'],
		taken: 1,
		line: 3,
		reason: /2 values under 3 headings/
	},
	{
		name: 'a quotation mark that joins two lines',
		rows: ['date,temp_c,note', '2024-01-01,-5,"a', '2024-01-02,-5,b"', '2024-01-03,-5,c'],
		taken: 1,
		line: 2,
		reason: /swallowed by a cell of this row; a quotation mark joins lines 2 to 3 into one row/
	},
	{
		name: 'a day given twice with different values',
		rows: ['date,temp_c', '2024-01-01,-5', '2024-01-02,-6', '2024-01-02,-7'],
		taken: 2,
		line: 3,
		reason: /line 4 gives other values for the same day and stands/
	},
	{
		name: 'a day given twice with the same values',
		rows: ['date,temp_c', '2024-01-01,-5', '2024-01-02,-6', '2024-01-01,-5'],
		taken: 2,
		line: 4,
		reason: /repeats the day of line 2 with nothing new, and is dropped/
	},
	{
		name: 'an hour that the clock skips',
		rows: ['time,temp_c', '2024-03-10 01:00,-1', '2024-03-10 02:00,-2', '2024-03-10 03:00,-3'],
		taken: 2,
		line: 3,
		reason: /does not exist at the lake: clocks are set forward.*put LST into the heading/
	},
	{
		name: 'a doubled hour that comes three times',
		rows: [
			'time,temp_c',
			...['00:00,0', '01:00,-1', '01:00,-2', '01:00,-3'].map((row) => `2024-11-03 ${row}`)
		],
		taken: 3,
		line: 3,
		reason: /line 5 gives other values for the same hour and stands/
	}
];

test.each(PARTLY)('$name is rejected with its line and reason', async (file) => {
	const read = await readAll(lines(...file.rows));
	expect(read.days.length + read.hours.length).toBe(file.taken);
	expect(read.rejected[0]?.line).toBe(file.line);
	expect(read.rejected[0]?.reason).toMatch(file.reason);
	expect(read.isFatal).toBe(file.taken === 0);
});

test('a quotation mark far down condemns the file, and the line is named', async () => {
	const rows = daily(9000, (on, at) => (at === 6000 ? `${on},-5,"open` : `${on},-5,fine`));
	const read = await readAll(lines('date,temp_c,note', ...rows));
	expect(read.isFatal).toBe(true);
	expect(read.rejected.at(-1)).toEqual({
		line: 6002,
		reason: expect.stringMatching(/quotation mark/)
	});
});

test('a line of 5 MB far down condemns the file without being read to its end', async () => {
	const start = lines('date,temp_c', ...daily(5000, (on) => `${on},-5`));
	const read = await readAll(start + '1'.repeat(5e6));
	expect(read.isFatal).toBe(true);
	expect(read.rejected.at(-1)?.line).toBe(5002);
	expect(read.rejected.at(-1)?.reason).toMatch(/longer than 65,536 characters/);
	expect(read.bytesRead).toBeLessThan(start.length + 200_000);
});

test('month first far down in a file with the day first condemns the file', async () => {
	const dayFirst = daily(6000, (on) => `${on.slice(8)}/${on.slice(5, 7)}/${on.slice(0, 4)},-5.25`);
	const read = await readAll(lines('date,temp_c', ...dayFirst, '01/31/2041,-5'));
	expect(read.isFatal).toBe(true);
	expect(read.rejected.at(-1)?.line).toBe(6002);
	expect(read.rejected.at(-1)?.reason).toMatch(/day and month change places in this file/);
});

test('°F that shows far down condemns a file that was taken for °C', async () => {
	const rows = daily(6000, (on, at) => `${on},${at < 5500 ? 20 : 70}.25`);
	const read = await readAll(lines('date,temp_c', ...rows));
	expect(read.isFatal).toBe(true);
	expect(read.rejected.at(-1)?.reason).toMatch(/can only be °F/);
});
