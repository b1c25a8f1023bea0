import { expect, test } from 'vitest';
import { dayFromHours } from '#lib/model/hours-to-days.ts';
import { mapping as mappingSchema, type Mapping } from '#lib/server/weather/source/contract.ts';
import { startOfDay_s } from '#lib/server/weather/source/lake-days.ts';
import { durationOf_s } from '#lib/server/weather/source/read/duration.ts';
import { mapAnswer } from '#lib/server/weather/source/read/map-answer.ts';
import type { Mapped, Place } from '#lib/server/weather/source/read/mapped.ts';
import { parseCsv } from '#lib/server/weather/source/read/parse-csv.ts';
import { stepsAfter_s, stepsBefore_s } from '#lib/server/weather/source/read/steps.ts';

type Json = Parameters<typeof mapAnswer>[1]['json'];

const OSLO: Place = { timeZone: 'Europe/Oslo', from: '2026-01-20', to: '2026-01-21' };

function columns(changes: Partial<Mapping['time']> = {}, extra: Partial<Mapping> = {}): Mapping {
	return mappingSchema.parse({
		layout: 'columns',
		step: 'hourly',
		time: { path: '$.time', form: 'iso', zone: 'utc', stamp: 'start', ...changes },
		values: {
			air: { path: '$.air', unit: '°C' },
			precipitation: {
				path: '$.rain',
				unit: 'mm',
				stamp: changes.stamp === 'end' ? 'end' : 'start'
			}
		},
		...extra
	});
}

function read(mapping: Mapping, json: Json, place: Place = OSLO): Promise<Mapped> {
	return mapAnswer(mapping, { json, table: null }, place);
}

function text(at_s: number | undefined): string {
	return new Date((at_s ?? NaN) * 1000).toISOString().slice(0, 16);
}

test.each<[form: Mapping['time']['form'], zone: Mapping['time']['zone'], time: string | number]>([
	['iso', 'offset', '2026-01-20T13:00:00+01:00'],
	['iso', 'offset', '2026-01-20T12:00Z'],
	['iso', 'offset', '2026-01-20T06:00:00.000-0600'],
	['iso', 'utc', '2026-01-20 12:00'],
	['iso', 'utc', '2026-01-20T13:00+01:00'],
	['iso', 'lake', '2026-01-20T13:00:00'],
	['iso', { name: 'America/Chicago' }, '2026-01-20T06:00'],
	['iso', { path: '$.zone' }, '2026-01-20T06:00'],
	['iso', { path: '$.offset' }, '2026-01-20T06:00'],
	['epoch_s', 'utc', 1_768_910_400],
	['epoch_s', 'lake', '1768910400'],
	['epoch_ms', 'utc', 1_768_910_400_000],
	['Ymd', 'utc', '202601201200'],
	['d/m/Y', 'lake', '20.01.2026 13:00'],
	['m/d/Y', 'lake', '1/20/2026 1:00 PM'],
	['d mon Y', 'utc', '20 Jan 2026 12:00'],
	['interval', 'offset', '2026-01-20T12:00:00+00:00/PT1H'],
	['interval', 'offset', '2026-01-20T12:00:00Z/2026-01-20T13:00:00Z']
])('a time written as %s, zone %o: %s', async (form, zone, time) => {
	const json = { time: [time], air: [-4], rain: [0], zone: 'America/Chicago', offset: -21_600 };
	const { hours } = await read(columns({ form, zone }), json);
	expect(hours.map(({ at_s }) => text(at_s))).toEqual(['2026-01-20T12:00']);
	expect(hours[0]?.air_degC).toBe(-4);
});

test('times without an offset where one is promised are not guessed', async () => {
	const json = { time: ['2026-01-20T12:00'], air: [1], rain: [0] };
	const { hours, tally } = await read(columns({ zone: 'offset' }), json);
	expect(hours).toEqual([]);
	expect(tally.count('unreadTimes', null)).toBe(1);
});

test('a zone that is not named, or not known, is told', async () => {
	for (const zone of [{}, { zone: 'Middle/Earth' }, { zone: 99_999 }]) {
		const json = { ...zone, time: ['2026-01-20T12:00'], air: [1], rain: [0] };
		const { hours, tally } = await read(columns({ zone: { path: '$.zone' } }), json);
		expect(hours).toEqual([]);
		expect(tally.problems[0]).toMatch(/time zone/);
	}
});

test('a value stamped at its end belongs to the hour before', async () => {
	const json = { time: ['2026-01-20T13:00Z', '2026-01-20T14:00Z'], air: [1, 2], rain: [0.1, 0.2] };
	const { hours } = await read(columns({ stamp: 'end' }), json);
	expect(hours.map(({ at_s }) => text(at_s))).toEqual(['2026-01-20T12:00', '2026-01-20T13:00']);
	const early = { ...json, time: ['2026-01-20T12:53Z', '2026-01-20T13:53Z'] };
	const reported = await read(columns({ stamp: 'end' }), early);
	expect(reported.hours).toEqual(hours);
});

test('spring: the hour that clocks skip is left out, and the day has 23 hours', async () => {
	const time = Array.from(
		{ length: 24 },
		(_, at) => `2026-03-29T${String(at).padStart(2, '0')}:00`
	);
	const json = { time, air: time.map((_, at) => at), rain: time.map(() => 0.5) };
	const place = { timeZone: 'Europe/Oslo', from: '2026-03-29', to: '2026-03-29' };
	const { hours, tally } = await read(columns({ zone: 'lake' }), json, place);
	expect(hours).toHaveLength(23);
	expect(tally.count('skippedTimes', null)).toBe(1);
	const span = {
		on: '2026-03-29',
		start_s: startOfDay_s('2026-03-29', 'Europe/Oslo'),
		end_s: startOfDay_s('2026-03-30', 'Europe/Oslo')
	};
	expect(dayFromHours(span, hours).precipitation_kg_m2).toBeCloseTo(11.5, 9);
});

test('autumn: the hour that comes twice is two hours, whichever end the record begins at', async () => {
	const hands = [
		'00',
		'01',
		'02',
		'02',
		'03',
		...Array.from({ length: 20 }, (_, at) => `${at + 4}`)
	];
	const time = hands.map((hour) => `2026-10-25T${hour.padStart(2, '0')}:00`);
	const air = time.map((_, at) => at);
	const place = { timeZone: 'Europe/Oslo', from: '2026-10-25', to: '2026-10-25' };
	const json = { time, air, rain: time.map(() => 0) };
	const { hours, tally } = await read(columns({ zone: 'lake' }), json, place);
	expect(hours).toHaveLength(25);
	expect(hours.map(({ air_degC }) => air_degC)).toEqual(air);
	expect(tally.count('doubledTimes', null)).toBe(2);
	const backwards = { time: time.toReversed(), air: air.toReversed(), rain: json.rain };
	const newestFirst = await read(columns({ zone: 'lake' }), backwards, place);
	expect(newestFirst.hours).toEqual(hours);
});

test('a lake whose clock is half an hour aside has all its hours', async () => {
	const place = { timeZone: 'Asia/Kolkata', from: '2026-01-20', to: '2026-01-20' };
	const start_s = startOfDay_s('2026-01-20', 'Asia/Kolkata');
	const first_s = Math.ceil(start_s / 3600) * 3600;
	const time = Array.from({ length: 30 }, (_, at) => first_s - 7200 + at * 3600);
	const json = { time, air: time.map((_, at) => at), rain: time.map(() => 1) };
	const { hours } = await read(columns({ form: 'epoch_s' }), json, place);
	expect(hours).toHaveLength(24);
	expect(hours[0]?.at_s).toBe(start_s);
});

test('parts of an hour are averaged and added up; a part that is missing leaves the sum unknown', async () => {
	const time = Array.from({ length: 18 }, (_, at) => 1_768_910_400 + at * 600).filter(
		(_, at) => at !== 8
	);
	const json = { time, air: time.map((_, at) => at), rain: time.map(() => 0.1) };
	const { hours } = await read(columns({ form: 'epoch_s' }), json);
	expect(hours).toHaveLength(3);
	expect(hours[0]?.air_degC).toBeCloseTo(2.5, 9);
	expect(hours[0]?.precipitation_kg_m2).toBeCloseTo(0.6, 9);
	expect(hours[1]?.precipitation_kg_m2).toBeNull();
	expect(hours[1]?.air_degC).not.toBeNull();
});

test('rates grow with their span, amounts are spread over it', async () => {
	const time = [0, 3, 6, 9, 12].map((hour) => 1_768_910_400 + hour * 3600);
	const json = { time, air: [0, 3, 6, 9, 12], rain: [0.5, 0.5, 0.5, 0.5, 0.5] };
	const values = (unit: string) => ({
		air: { path: '$.air', unit: '°C' },
		precipitation: { path: '$.rain', unit, stamp: 'start' as const }
	});
	const epoch = { form: 'epoch_s', stamp: 'instant' } as const;
	const rates = await read(columns(epoch, { values: values('mm/h') }), json);
	expect(rates.hours[4]?.precipitation_kg_m2).toBeCloseTo(0.5, 9);
	const amounts = await read(columns(epoch, { values: values('mm') }), json);
	expect(amounts.hours[4]?.precipitation_kg_m2).toBeCloseTo(0.5 / 3, 9);
	expect(amounts.hours.slice(0, 13).map(({ air_degC }) => air_degC)).toEqual(
		Array.from({ length: 13 }, (_, at) => expect.closeTo(at, 9))
	);
	const kept = await read(columns({ form: 'epoch_s' }, { values: values('mm') }), json);
	expect(kept.hours.slice(0, 4).map(({ air_degC }) => air_degC)).toEqual([0, 0, 0, 3]);
});

test('an hour that two spans claim takes from the shorter one', async () => {
	const json = {
		time: ['2026-01-20T12:00Z/PT2H', '2026-01-20T13:00Z/PT6H'],
		air: [-1, -2],
		rain: [0.4, 6]
	};
	const { hours } = await read(columns({ form: 'interval', zone: 'offset' }), json);
	const rain = hours.map(({ precipitation_kg_m2 }) => precipitation_kg_m2);
	expect(rain).toEqual([0.2, 0.2, 1, 1, 1, 1, 1]);
});

test('parts that can be do not add up to an hour that can not', async () => {
	const time = Array.from({ length: 12 }, (_, at) => 1_768_910_400 + at * 600);
	const json = { time, air: time.map(() => -1), rain: time.map((_, at) => (at < 6 ? 100 : 1)) };
	const { hours } = await read(columns({ form: 'epoch_s' }), json);
	expect(hours.map(({ precipitation_kg_m2 }) => precipitation_kg_m2)).toEqual([null, 6]);
});

test('steps widen where they are kept up; a hole is no step', () => {
	const at = (hours: number[]) => hours.map((hour) => hour * 3600);
	const inHours = (steps_s: number[]) => steps_s.map((step_s) => step_s / 3600);
	expect(inHours(stepsAfter_s(at([0, 1, 2, 3, 9, 15, 21])))).toEqual([1, 1, 1, 6, 6, 6, 6]);
	expect(inHours(stepsAfter_s(at([0, 1, 2, 6, 7, 8])))).toEqual([1, 1, 1, 1, 1, 1]);
	expect(inHours(stepsAfter_s(at([0, 6, 12, 24, 30])))).toEqual([6, 6, 6, 6, 6]);
	expect(inHours(stepsBefore_s(at([0, 1, 2, 6, 7, 8])))).toEqual([1, 1, 1, 1, 1, 1]);
	expect(stepsAfter_s([])).toEqual([]);
	expect(inHours(stepsAfter_s([7200]))).toEqual([1]);
});

test.each([
	[12, /12 hours apart/],
	[24, /a day apart; choose daily/]
])('values %i hours apart are no hours', async (step, words) => {
	const time = [0, 1, 2, 3].map((at) => 1_768_867_200 + at * step * 3600);
	const json = { time, air: [1, 2, 3, 4], rain: [0, 0, 0, 0] };
	const { hours, tally } = await read(columns({ form: 'epoch_s' }), json);
	expect(hours).toEqual([]);
	expect(tally.problems[0]).toMatch(words);
});

test('durations of ISO 8601', () => {
	expect(durationOf_s('PT3H')).toBe(10_800);
	expect(durationOf_s('P1DT6H30M')).toBe(109_800);
	expect(durationOf_s('P7D')).toBe(604_800);
	expect(durationOf_s('P1W')).toBe(604_800);
	for (const odd of ['P1M', 'P1Y', 'PT', 'P', 'PT0S', '3H', 'PT3.5H', '', '-PT3H']) {
		expect(durationOf_s(odd)).toBeNull();
	}
});

const daily = (zone: Mapping['time']['zone'], form: Mapping['time']['form'], stamp = 'start') =>
	mappingSchema.parse({
		layout: 'rows',
		rows: '$[*]',
		step: 'daily',
		time: { path: '$.on', form, zone, stamp },
		values: {
			min: { path: '$.low', unit: '°C' },
			max: { path: '$.high', unit: '°C' },
			landSnow: { path: '$.snow', unit: 'cm' }
		}
	});

test.each<[form: Mapping['time']['form'], stamp: string, on: string | number]>([
	['iso', 'start', '2026-01-20'],
	['iso', 'start', '2026-01-20T00:00:00'],
	['iso', 'start', '2026-01-20T12:00:00Z'],
	['iso', 'start', '2026-01-19T23:00:00Z'],
	['epoch_s', 'start', 1_768_863_600],
	['iso', 'end', '2026-01-21'],
	['Ymd', 'start', 20_260_120]
])('a day dated as %s, %s: %s is the day of the lake', async (form, stamp, on) => {
	const { days } = await read(daily('utc', form, stamp), [{ on, low: -9, high: -3, snow: 12 }]);
	expect(days).toMatchObject([{ on: '2026-01-20', min_degC: -9, max_degC: -3, landSnow_m: 0.12 }]);
});

test('a lowest above the highest is believed in neither', async () => {
	const rows = [
		{ on: '2026-01-20', low: -3, high: -9, snow: 12 },
		{ on: '2026-01-21', low: -9, high: -3, snow: 12 },
		{ on: '2026-01-21', low: -8, high: null, snow: 13 }
	];
	const { days, tally } = await read(daily('utc', 'iso'), rows);
	expect(days[0]).toMatchObject({ min_degC: null, max_degC: null, landSnow_m: 0.12 });
	expect(days[1]).toMatchObject({ min_degC: -8, max_degC: -3, landSnow_m: 0.13 });
	expect(tally.count('contradictions', null)).toBe(1);
	expect(tally.count('repeatedTimes', null)).toBe(1);
});

test('a table with a comma in its numbers, notes above it and a clock column', async () => {
	const csv = [
		'# invented station',
		'Datum;Zeit;Lufttemperatur;Niederschlag',
		'20.01.2026;13:00;-4,5;0,2',
		'20.01.2026;14:00;-4,1;-',
		'20.01.2026;15:00;-3,9;0,0'
	].join('\n');
	const { table } = parseCsv(Buffer.from(csv), csv, 'weather.example');
	if (!table) throw new Error('no table');
	const mapping = mappingSchema.parse({
		layout: 'csv',
		step: 'hourly',
		time: { path: 'datum', clock: 'Zeit', form: 'd/m/Y', zone: 'lake', stamp: 'start' },
		values: {
			air: { path: 'Lufttemperatur', unit: '°C' },
			precipitation: { path: 'Niederschlag', unit: 'mm' }
		}
	});
	const { hours } = await mapAnswer(mapping, { json: null, table }, OSLO);
	expect(hours.map(({ air_degC }) => air_degC)).toEqual([-4.5, -4.1, -3.9]);
	expect(hours.map(({ precipitation_kg_m2 }) => precipitation_kg_m2)).toEqual([0.2, null, 0]);
	expect(text(hours[0]?.at_s)).toBe('2026-01-20T12:00');
});

test('a table may name its zone in a column', async () => {
	const csv =
		'time,tz,temp\n2026-01-20 06:00,America/Chicago,-4\n2026-01-20 07:00,America/Chicago,-5';
	const { table } = parseCsv(Buffer.from(csv), csv, 'weather.example');
	if (!table) throw new Error('no table');
	const mapping = mappingSchema.parse({
		layout: 'csv',
		step: 'hourly',
		time: { path: 'time', form: 'iso', zone: { path: 'tz' }, stamp: 'start' },
		values: { air: { path: 'temp', unit: '°C' } }
	});
	const { hours } = await mapAnswer(mapping, { json: null, table }, OSLO);
	expect(hours.map(({ at_s }) => text(at_s))).toEqual(['2026-01-20T12:00', '2026-01-20T13:00']);
});

test('rows picked by a filter keep to their own row', async () => {
	const mapping = mappingSchema.parse({
		layout: 'rows',
		rows: '$.series[*]',
		step: 'hourly',
		time: { path: '$.at', form: 'iso', zone: 'utc', stamp: 'start' },
		values: {
			air: { path: "$.parameters[?@.name=='t'].values[0]", unit: '°C' },
			wind: { path: "$.parameters[?@.name=='ws'].values[0]", unit: 'm/s' }
		}
	});
	const row = (hour: number, parameters: Json[]) => ({ at: `2026-01-20T1${hour}:00`, parameters });
	const json = {
		series: [
			row(0, [
				{ name: 'ws', values: [3] },
				{ name: 't', values: [-1] }
			]),
			row(1, [{ name: 'ws', values: [4] }]),
			row(2, [{ name: 't', values: [-3] }])
		]
	};
	const { hours } = await read(mapping, json);
	expect(hours.map(({ air_degC }) => air_degC)).toEqual([-1, null, -3]);
	expect(hours.map(({ wind_m_s }) => wind_m_s)).toEqual([3, 4, null]);
});

test('rain alone is all precipitation only with the snowfall beside it', async () => {
	const values = {
		air: { path: '$.air', unit: '°C' },
		precipitation: { path: '$.rain', unit: 'mm rain' },
		snowfall: { path: '$.snow', unit: 'mm water' }
	};
	const json = {
		time: ['2026-01-20T12:00', '2026-01-20T13:00'],
		air: [1, 1],
		rain: [0.4, 0.4],
		snow: [0.6, null]
	};
	const { hours } = await read(columns({}, { values }), json);
	expect(hours[0]?.precipitation_kg_m2).toBeCloseTo(1, 9);
	expect(hours[1]?.precipitation_kg_m2).toBeNull();
});
