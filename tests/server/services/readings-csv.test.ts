import { expect, test } from 'vitest';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings, listReadings } from '../../../src/lib/server/services/readings.ts';
import { readingsFromCsv, readingsToCsv } from '../../../src/lib/server/services/readings-csv.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const HEADER =
	'on,place,kind,hole,total_cm,clear_cm,white_cm,snow_cm,slush_cm,freeboard_cm,core,by,secondhand,remark';

async function emptyLake(now?: string) {
	const ctx = await freshContext(now);
	return { ctx, lake: (await inventedLake(ctx)).id };
}

test('what is written is read back as it was', async () => {
	const { ctx, lake } = await emptyLake();
	const readings = [
		{ on: '2026-12-20', kind: 'wentThrough', holes: [], place: 'inlet, "the" narrows' },
		{
			on: '2027-01-10',
			kind: 'atLeast',
			holes: [{ total_m: 0.1016 }],
			remark: 'two\nlines; really'
		},
		{
			on: '2027-01-10',
			kind: 'measured',
			holes: [
				{ clear_m: 0.25, white_m: 0.065, freeboard_m: -0.012 },
				{ total_m: 0.29, snow_m: 0 }
			],
			core: 'wet',
			by: '=1+1',
			secondHand: true,
			remark: '-5 in the morning'
		}
	].map((reading) => readingInput.parse(reading));
	await addReadings(ctx, lake, 'main', readings);
	const csv = await readingsToCsv(ctx, lake, 'main');
	const other = await inventedLake(ctx, { name: 'Other' });
	expect(await readingsFromCsv(ctx, other.id, 'main', csv)).toMatchObject({ status: 'stored' });
	const read = await listReadings(ctx, other.id, 'main');
	expect(read.map((reading) => ({ ...reading, id: '' }))).toEqual(
		readings.map((reading) => ({ ...reading, id: '' }))
	);
});

test('no cell of text is taken for a formula by a spreadsheet', async () => {
	const { ctx, lake } = await emptyLake();
	const cells = ['=cmd', '+1', '-1', '@x', 'plain'];
	const readings = cells.map((remark, index) =>
		readingInput.parse({
			on: `2027-01-1${index}`,
			kind: 'measured',
			holes: [{ total_m: 0.2 }],
			place: remark,
			by: remark,
			remark
		})
	);
	await addReadings(ctx, lake, 'main', readings);
	const csv = await readingsToCsv(ctx, lake, 'main');
	expect(csv.split('\r\n')[0]).toBe(HEADER);
	expect(csv).not.toMatch(/,[=+@]|,-1/);
	expect(csv).toContain("2027-01-10,'=cmd,measured,1,20,,,,,,,'=cmd,,'=cmd");
	expect(csv).toContain('plain,measured');
});

test('rows of one day, place and kind are holes of one reading', async () => {
	const { ctx, lake } = await emptyLake();
	const rows = [
		'2027-01-10,bay,measured,1,30,,,,,,,A.,,',
		'2027-01-10,bay,measured,2,32,,,,,,sound,,,',
		'2027-01-10,point,measured,1,28,,,,,,,,,'
	];
	const csv = [HEADER, ...rows].join('\n');
	const { readings } = await readingsFromCsv(ctx, lake, 'main', csv);
	expect(readings).toMatchObject([
		{ place: 'bay', core: 'sound', by: 'A.', holes: [{ total_m: 0.3 }, { total_m: 0.32 }] },
		{ place: 'point', holes: [{ total_m: 0.28 }] }
	]);
});

test('a plain table of date and thickness is read, without the rows that it distrusts', async () => {
	const { ctx, lake } = await emptyLake('2027-03-10T12:00:00Z');
	const csv = [
		'lake,date,total_cm,clear_cm,white_cm,snow_cm,qc',
		'X,2027-01-26,52.5,33.4,19.1,14.4,',
		'X,2027-02-23,9,,,,spike',
		'X,2027-03-05,62.3,31.1,31.2,,layers_do_not_sum'
	].join('\n');
	const { status, readings, leftOut } = await readingsFromCsv(ctx, lake, 'main', csv);
	expect(status).toBe('stored');
	expect(readings.map(({ on }) => on)).toEqual(['2027-01-26', '2027-03-05']);
	expect(readings[0]?.holes[0]).toMatchObject({ clear_m: 0.334, white_m: 0.191, slush_m: null });
	expect(leftOut).toEqual([{ line: 3, reason: 'marked spike' }]);
});

test('semicolons with decimal commas, and a byte order mark, are read', async () => {
	const { ctx, lake } = await emptyLake();
	const csv = '\uFEFFdate;total_cm;snow_cm\r\n2027-01-26;52,5;3\r\n';
	const { readings } = await readingsFromCsv(ctx, lake, 'main', csv);
	expect(readings[0]?.holes).toMatchObject([{ total_m: 0.525, snow_m: 0.03 }]);
});

test('one bad row stores nothing, and every bad row is named', async () => {
	const { ctx, lake } = await emptyLake();
	const csv = [
		'on,total_cm,kind',
		'2027-01-10,30,measured',
		'10.1.2027,30,measured',
		'2027-01-12,thick,measured',
		'2027-01-13,3000,measured',
		'2027-01-14,,measured',
		'2027-01-15,20,guessed',
		'2027-01-16,20,measured,more'
	].join('\n');
	const { status, ids, problems } = await readingsFromCsv(ctx, lake, 'main', csv);
	expect(status).toBe('refused');
	expect(ids).toEqual([]);
	expect(problems.map(({ line }) => line)).toEqual([8]);
	const { problems: rest } = await readingsFromCsv(
		ctx,
		lake,
		'main',
		csv.split('\n').slice(0, -1).join('\n')
	);
	expect(rest.map(({ line }) => line)).toEqual([3, 4, 5, 6, 7]);
	expect(await listReadings(ctx, lake, 'main')).toEqual([]);
});

test('a dry run says what it would store and stores nothing', async () => {
	const { ctx, lake } = await emptyLake();
	const csv = 'on,total_cm\n2027-01-10,30\n';
	const report = await readingsFromCsv(ctx, lake, 'main', csv, { dryRun: true });
	expect(report).toMatchObject({ status: 'dryRun', ids: [], readings: [{ on: '2027-01-10' }] });
	expect(await listReadings(ctx, lake, 'main')).toEqual([]);
});

test.each([
	['', 'no column "on" or "date"'],
	['on,total_cm\n', 'no rows'],
	['on,total_in\n2027-01-10,12\n', '"total_in" is not known'],
	['<html><body>no</body></html>', 'no column'],
	['lake,date,total_cm\nA,2027-01-10,12\nB,2027-01-10,12\n', '2 lakes'],
	['on,total_cm\n2027-01-10,"12\n', 'Quote']
])('%j is refused with its reason', async (csv, reason) => {
	const { ctx, lake } = await emptyLake();
	const { status, problems } = await readingsFromCsv(ctx, lake, 'main', csv);
	expect(status).toBe('refused');
	expect(problems.map((problem) => problem.reason).join()).toContain(reason);
});

test('holes that were seen and holes that were told stay two readings', async () => {
	const { ctx, lake } = await emptyLake();
	const csv = [
		'on,place,total_cm,secondhand',
		'2027-01-10,bay,30,',
		'2027-01-10,bay,36,yes',
		'2027-01-10,bay,31,No'
	].join('\n');
	const { readings } = await readingsFromCsv(ctx, lake, 'main', csv);
	expect(readings).toMatchObject([
		{ secondHand: false, holes: [{ total_m: 0.3 }, { total_m: 0.31 }] },
		{ secondHand: true, holes: [{ total_m: 0.36 }] }
	]);
});

test('a word that is neither yes nor no is refused with its line', async () => {
	const { ctx, lake } = await emptyLake();
	const csv = 'on,total_cm,secondhand\n2027-01-10,30,maybe';
	expect(await readingsFromCsv(ctx, lake, 'main', csv)).toMatchObject({
		status: 'refused',
		problems: [{ line: 2, reason: 'secondhand is "maybe", which is neither yes nor no' }]
	});
});

test('a table with a day to come is refused, by its line', async () => {
	const { ctx, lake } = await emptyLake();
	const csv = 'on,total_cm\n2027-02-10,30\n2027-03-01,40\n';
	const { status, problems } = await readingsFromCsv(ctx, lake, 'main', csv);
	expect(status).toBe('refused');
	expect(problems).toEqual([
		{
			line: 3,
			reason: '2027-03-01 is after today at the lake, 2027-02-10; give the day it was measured'
		}
	]);
});
