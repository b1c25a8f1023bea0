import { expect, test } from 'vitest';
import type { IsoDate } from '../../../src/lib/model/calendar.ts';
import type { Context } from '../../../src/lib/server/context.ts';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { lakeView, outlookInput } from '../../../src/lib/server/services/lake-view.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings, deleteReading } from '../../../src/lib/server/services/readings.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

const FREEZE_UP = '2026-11-20';

interface Setup {
	now?: string;
	from?: IsoDate;
	days?: number;
	record?: object | null;
	timeZone?: string;
}

/** A lake on 10 February 2027 with weather from October on. */
async function lake({
	now = '2027-02-10T12:00:00Z',
	from = '2026-10-01',
	days = 120,
	record = { freezeUpOn: FREEZE_UP },
	timeZone = 'Etc/GMT+3'
}: Setup = {}): Promise<{ ctx: Context; id: string }> {
	const ctx = await freshContext(now);
	const { id } = await inventedLake(ctx, { timeZone });
	if (days > 0) await importWeather(ctx, id, inPieces(winterCsv(from, days)));
	if (record) {
		await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...winterInput.parse(record) });
	}
	return { ctx, id };
}

test('a winter in progress is shown up to its last observation', async () => {
	const { ctx, id } = await lake();
	const view = await lakeView(ctx, id);
	expect(view).toMatchObject({
		site: 'main',
		winter: '2026-27',
		winters: ['2026-27'],
		today: '2027-02-10',
		asOf: '2027-01-28',
		status: 'ok',
		weather: { from: '2026-10-01', to: '2027-01-28', days: 120, gapDays: 0, age_d: 13 }
	});
	expect(view.weather.hasPrecipitation).toBe(true);
	const days = view.outlook?.forecast.days ?? [];
	expect(days.at(0)?.on).toBe(FREEZE_UP);
	expect(days.at(-1)?.on).toBe('2027-01-28');
	expect(view.outlook?.today?.column.clear_m).toBeGreaterThan(0.1);
	expect(view.outlook?.forecast.loads).toHaveLength(view.loads.length);
});

test('weather that goes on past today is not looked at', async () => {
	const { ctx, id } = await lake({ days: 180 });
	const view = await lakeView(ctx, id);
	expect(view.asOf).toBe('2027-02-10');
	expect(view.weather.age_d).toBe(0);
});

test('today is the day at the lake, not here', async () => {
	const now = '2027-02-10T23:30:00Z';
	const east = await lake({ now, timeZone: 'Asia/Tokyo' });
	const west = await lake({ now, timeZone: 'Etc/GMT+3' });
	expect((await lakeView(east.ctx, east.id)).today).toBe('2027-02-11');
	expect((await lakeView(west.ctx, west.id)).today).toBe('2027-02-10');
});

test.each([
	['noWeather', { days: 0 }],
	['noFreezeUp', { record: null }],
	['beforeFreezeUp', { days: 30, now: '2026-11-01T12:00:00Z' }]
])('%s is an answer, without an estimate', async (status, setup) => {
	const { ctx, id } = await lake(setup);
	expect(await lakeView(ctx, id)).toMatchObject({ status, outlook: null, winter: '2026-27' });
});

test('in summer, and before this winter has weather, the last winter is shown', async () => {
	const { ctx, id } = await lake({ now: '2028-12-10T12:00:00Z', days: 230 });
	const view = await lakeView(ctx, id);
	expect(view).toMatchObject({ winter: '2026-27', asOf: '2027-05-18', status: 'ok' });
	expect(view.weather.age_d).toBe(572);
});

test('a lake of which nothing is known shows the present winter', async () => {
	const { ctx, id } = await lake({ days: 0, record: null });
	const view = await lakeView(ctx, id);
	expect(view).toMatchObject({ winter: '2026-27', winters: [], asOf: '2027-02-10' });
	expect(view.weather).toMatchObject({ from: null, to: null, days: 0, gapDays: 0, age_d: null });
});

test('a past winter is shown as of its ice-out', async () => {
	const record = { freezeUpOn: FREEZE_UP, iceOutOn: '2027-04-20' };
	const { ctx, id } = await lake({ now: '2028-01-10T12:00:00Z', days: 300, record });
	expect(await lakeView(ctx, id, { winter: '2026-27' })).toMatchObject({ asOf: '2027-04-20' });
});

test('a day asked for is answered from what was known by then', async () => {
	const { ctx, id } = await lake();
	const asOf = '2027-01-05';
	const before = await lakeView(ctx, id, { asOf });
	const reading = { on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.7 }] };
	await addReadings(ctx, id, 'main', [readingInput.parse(reading)]);
	const later = 'date,tmean_c\n2027-01-06,9\n2027-01-07,9\n2027-01-08,9\n';
	await importWeather(ctx, id, inPieces(later));
	expect((await lakeView(ctx, id, { asOf })).outlook).toEqual(before.outlook);
	expect((await lakeView(ctx, id)).outlook).not.toEqual(before.outlook);
});

test('days past the known weather are told from the climate, with a band that widens', async () => {
	const { ctx, id } = await lake();
	const { outlook, asOf } = await lakeView(ctx, id, { until: '2027-02-25' });
	const past = outlook?.forecast.days.filter(({ on }) => on > asOf) ?? [];
	expect(past).toHaveLength(28);
	expect(new Set(past.map(({ source }) => source))).toEqual(new Set(['climate']));
	const width = (day: (typeof past)[number] | undefined) =>
		(day?.total_m.p95 ?? NaN) - (day?.total_m.p05 ?? NaN);
	expect(width(past.at(-1))).toBeGreaterThan(width(past[0]));
});

test('all that may come of a winter is told to its end, but nothing past its ice-out', async () => {
	const { ctx, id } = await lake({ days: 240 });
	const ahead = await lakeView(ctx, id, { asOf: '2027-02-10', toWinterEnd: true });
	expect(ahead.outlook?.forecast.days.at(-1)).toMatchObject({ on: '2027-06-30' });
	expect(ahead.outlook?.forecast.iceOut?.p50).toMatch(/^2027-0[3-6]/);
	const record = winterInput.parse({ freezeUpOn: FREEZE_UP, iceOutOn: '2027-04-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	const options = { winter: '2026-27', asOf: '2027-04-25', toWinterEnd: true };
	const { outlook } = await lakeView(ctx, id, options);
	expect(outlook?.forecast.days.at(-1)?.on).toBe('2027-04-25');
});

test('as long as nothing changes the same answer is given out, and after a change another', async () => {
	const { ctx, id } = await lake();
	const ask = async () => (await lakeView(ctx, id, { toWinterEnd: true })).outlook;
	const [first, second] = await Promise.all([ask(), ask()]);
	expect(first?.forecast.days.at(-1)?.on).toBe('2027-06-30');
	expect(second).toBe(first);
	const reading = { on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.3 }] };
	const [readingId = ''] = await addReadings(ctx, id, 'main', [readingInput.parse(reading)]);
	expect(await ask()).not.toBe(first);
	await deleteReading(ctx, id, readingId);
	expect(await ask()).toBe(first);
});

test('days after a stretch without weather stay gaps without a thickness', async () => {
	const { ctx, id } = await lake();
	const options = { asOf: '2027-02-05', until: '2027-02-10' };
	const { outlook } = await lakeView(ctx, id, options);
	const past = outlook?.forecast.days.filter(({ on }) => on > '2027-01-29') ?? [];
	expect(past).toHaveLength(12);
	for (const { source, total_m } of past) {
		expect(source).toBe('gap');
		expect(Object.values(total_m).every((value) => value === null)).toBe(true);
	}
});

test('earlier winters with readings and weather teach this one', async () => {
	const { ctx, id } = await lake({ from: '2025-10-01', days: 485 });
	const before = await outlookInput(ctx, id);
	expect(before.memory).toBeNull();
	const record = winterInput.parse({ freezeUpOn: '2025-11-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2025-26', ...record });
	const thin = (on: string, total_m: number) => ({ on, kind: 'measured', holes: [{ total_m }] });
	const readings = [thin('2025-12-20', 0.12), thin('2026-01-15', 0.15)];
	await addReadings(
		ctx,
		id,
		'main',
		readings.map((each) => readingInput.parse(each))
	);
	const taught = await lakeView(ctx, id);
	const { memory } = await outlookInput(ctx, id);
	expect(memory).toMatchObject({ winters: 1, readings: 2 });
	expect(taught.outlook?.forecast.memoryText).toMatch(
		/^1 past winter with 2 readings: this lake grows slower/
	);
	const of = async (asOf: IsoDate) => (await outlookInput(ctx, id, { asOf })).memory;
	expect(await of('2026-01-10')).toBeNull();
	await addReadings(ctx, id, 'main', [readingInput.parse(thin('2026-01-20', 0.16))]);
	expect(await of('2027-01-10')).toMatchObject({ readings: 3 });
});

test('a reading moves the estimate from its day on', async () => {
	const { ctx, id } = await lake();
	const before = await lakeView(ctx, id);
	const reading = { on: '2027-01-15', kind: 'measured', holes: [{ total_m: 0.3 }] };
	const [readingId = ''] = await addReadings(ctx, id, 'main', [readingInput.parse(reading)]);
	const after = await lakeView(ctx, id);
	expect(after.readings.map((each) => each.id)).toEqual([readingId]);
	expect(after.outlook?.anchors).toMatchObject([{ on: '2027-01-15', readingIds: [readingId] }]);
	const thickness = ({ outlook }: typeof after) => {
		const column = outlook?.today?.column;
		return column ? column.clear_m + column.white_m : NaN;
	};
	expect(thickness(before) - thickness(after)).toBeGreaterThan(0.02);
});

test('nothing is told ahead of ice that has gone since the last weather', async () => {
	const { ctx, id } = await lake({ record: { freezeUpOn: FREEZE_UP, iceOutOn: '2027-02-09' } });
	const { asOf, outlook } = await lakeView(ctx, id, { toWinterEnd: true });
	expect(outlook?.forecast.days.at(-1)?.on).toBe(asOf);
	for (const { status, until } of outlook?.forecast.loads ?? []) {
		expect(['withheld', 'askAnEngineer']).toContain(status);
		expect((until ?? asOf) <= asOf).toBe(true);
	}
	const before = await lakeView(ctx, id, { toWinterEnd: true, asOf });
	expect(before.outlook?.forecast.days.at(-1)?.on).toBe('2027-06-30');
});
