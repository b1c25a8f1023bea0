import fc from 'fast-check';
import type { JsonValue } from 'jsonpath-rfc9535';
import { expect, test } from 'vitest';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import {
	mapping as mappingSchema,
	suggestMapping,
	type Mapping
} from '#lib/server/weather/source/contract.ts';
import { judge } from '#lib/server/weather/source/checks/judge.ts';
import { mapAnswer } from '#lib/server/weather/source/read/map-answer.ts';
import { parseCsv } from '#lib/server/weather/source/read/parse-csv.ts';
import { parseJson } from '#lib/server/weather/source/read/parse-json.ts';
import { pathProblem } from '#lib/server/weather/source/path-rules.ts';
import { ask } from '../../../support/weather-service.ts';

const RUNS = { numRuns: 300, seed: 20_260_120 };
const PLACE = { timeZone: 'Europe/Oslo', from: '2026-01-18', to: '2026-01-24' };

const values: Mapping['values'] = {
	air: { path: '$.air', unit: '°C' },
	min: { path: '$.min', unit: '°F' },
	max: { path: '$.max', unit: 'K' },
	precipitation: {
		path: '$.rain',
		unit: 'mm/h',
		duration_h: 3,
		orElse: { path: '$.wet', unit: 'mm' }
	},
	snowfall: { path: '$.snow', unit: 'in' },
	landSnow: { path: '$.depth', unit: 'in', scale: -2 },
	wind: { path: '$.wind', unit: 'kn' }
};

const rainAlone: Mapping['values'] = {
	...values,
	precipitation: { path: '$.rain', unit: 'mm rain' },
	snowfall: { path: '$.snow', unit: 'mm water' }
};

const MAPPINGS: readonly Mapping[] = (['columns', 'rows'] as const).flatMap((layout) =>
	(['hourly', 'daily'] as const).flatMap((step) =>
		(['iso', 'epoch_s', 'interval', 'd/m/Y'] as const)
			.filter((form) => step === 'hourly' || form !== 'interval')
			.flatMap((form) => [values, rainAlone].map((each) => ({ form, each })))
			.map(({ form, each }) =>
				mappingSchema.parse({
					layout,
					...(layout === 'rows' ? { rows: '$[*]' } : {}),
					step,
					time: {
						path: '$.time',
						form,
						zone: layout === 'rows' ? 'lake' : { path: '$.zone' },
						stamp: 'end'
					},
					values: each,
					issued: '$.issued',
					station: { name: '$.name', latitude: '$.zone', elevation_m: '$.air[0]' }
				})
			)
	)
);

/** Moments that often fall into the same hour, as text of a form; now and then something else. */
function timeIn(form: Mapping['time']['form']): fc.Arbitrary<JsonValue> {
	const moment = fc.integer({ min: -150, max: 700 }).map((at) => (1_768_910_400 + at * 600) * 1000);
	const text = moment.map((at_ms) => {
		const iso = new Date(at_ms).toISOString();
		if (form === 'epoch_s') return at_ms / 1000;
		if (form === 'interval') return `${iso}/PT${(at_ms / 600_000) % 200}H`;
		return form === 'd/m/Y' ? `${iso.slice(8, 10)}/01/2026 ${iso.slice(11, 16)}` : iso.slice(0, 16);
	});
	const odd = fc.constantFrom<JsonValue>('2026-03-29T02:30', null, '', 1e300, '2026-13-45', [], {});
	return fc.oneof({ weight: 20, arbitrary: text }, { weight: 1, arbitrary: odd });
}

const value = fc.oneof(
	{ weight: 6, arbitrary: fc.double({ min: 0, max: 260 }) },
	{ weight: 3, arbitrary: fc.double({ min: -90, max: 90 }) },
	{ weight: 1, arbitrary: fc.double() },
	{
		weight: 1,
		arbitrary: fc.constantFrom<JsonValue>(null, 'NaN', '-9999', '3.5', 'T', true, 1e308, 5e-324)
	},
	{ weight: 1, arbitrary: fc.jsonValue() }
);
const names = ['air', 'min', 'max', 'rain', 'wet', 'snow', 'depth', 'wind'] as const;
const zone = fc.constantFrom('Europe/Oslo', 'America/St_Johns', 'UTC', 3600, 'Nowhere/Land', null);

function columnsIn(form: Mapping['time']['form']) {
	return fc.integer({ min: 0, max: 30 }).chain((length) => {
		const list = (item: fc.Arbitrary<unknown>) =>
			fc.array(item, { minLength: length, maxLength: length });
		const lists = Object.fromEntries(names.map((name) => [name, list(value)]));
		return fc.record({ time: list(timeIn(form)), zone, issued: timeIn(form), ...lists });
	});
}

function rowsIn(form: Mapping['time']['form']) {
	const row = { time: timeIn(form), ...Object.fromEntries(names.map((name) => [name, value])) };
	return fc.array(fc.record(row, { requiredKeys: ['time'] }), { maxLength: 30 });
}

const anything = fc.oneof(columnsIn('iso'), rowsIn('epoch_s'), fc.jsonValue());

/** A mapping with an answer that is mostly in its shape. */
const readings = fc.constantFrom(...MAPPINGS).chain((mapping) => {
	const { form } = mapping.time;
	const shaped = mapping.layout === 'rows' ? rowsIn(form) : columnsIn(form);
	return fc.record({
		mapping: fc.constant(mapping),
		raw: fc.oneof({ weight: 9, arbitrary: shaped }, { weight: 1, arbitrary: anything })
	});
});

/** As it would come over the network. */
function asJson(raw: unknown): JsonValue {
	return JSON.parse(JSON.stringify(raw) ?? 'null');
}

const LIMITS: Readonly<Record<string, [lowest: number, hourly: number, daily: number]>> = {
	air_degC: [-75, 60, 60],
	min_degC: [-75, 60, 60],
	max_degC: [-75, 60, 60],
	precipitation_kg_m2: [0, 200, 500],
	snowfall_kg_m2: [0, 200, 500],
	landSnow_m: [0, 10, 10],
	wind_m_s: [0, 75, 75]
};

function expectPhysical(times: readonly (WeatherHour | DayValues)[], isHourly: boolean): void {
	for (const each of times) {
		for (const [field, found] of Object.entries(each)) {
			const limit = LIMITS[field];
			if (!limit || found === null) continue;
			expect(found).toBeGreaterThanOrEqual(limit[0]);
			expect(found).toBeLessThanOrEqual(isHourly ? limit[1] : limit[2]);
		}
	}
}

function expectOrdered(keys: readonly (string | number)[]): void {
	for (const [at, key] of keys.entries()) if (at > 0) expect(key > (keys[at - 1] ?? '')).toBe(true);
}

test('random JSON never throws and never gives a value that can not be', async () => {
	let found = 0;
	await fc.assert(
		fc.asyncProperty(readings, async ({ mapping, raw }) => {
			const mapped = await mapAnswer(mapping, { json: asJson(raw), table: null }, PLACE);
			expectPhysical(mapped.hours, true);
			expectPhysical(mapped.days, false);
			found += mapped.hours.length + mapped.days.length;
			expectOrdered(mapped.hours.map(({ at_s }) => at_s));
			expectOrdered(mapped.days.map(({ on }) => on));
			const madeAt = mapped.issuedAt ?? ask().now;
			for (const part of ['history', 'forecast'] as const) {
				const judged = judge(
					{ mapping, part: 'both', reach: {} },
					ask({ ...PLACE, part }),
					mapped,
					madeAt
				);
				expectPhysical(judged.hours, true);
				expect(judged.faults.every(({ text }) => text.length > 10)).toBe(true);
			}
		}),
		RUNS
	);
	expect(found).toBeGreaterThan(1000);
});

test('whatever is suggested for random JSON can be read, and stays possible', async () => {
	await fc.assert(
		fc.asyncProperty(anything, async (raw) => {
			const json = asJson(raw);
			const { mapping, guesses } = suggestMapping(json);
			for (const { path } of guesses) expect(pathProblem(path)).toBeNull();
			if (!mapping) return;
			const mapped = await mapAnswer(mapping, { json, table: null }, PLACE);
			expectPhysical(mapped.hours, true);
			expectPhysical(mapped.days, false);
		}),
		RUNS
	);
});

test('random bytes are JSON, CSV or a fault, and nothing else', () => {
	fc.assert(
		fc.property(fc.string({ maxLength: 300 }), (text) => {
			const { json, fault } = parseJson(text, 'weather.example');
			expect(fault === null || json === null).toBe(true);
			const csv = parseCsv(Buffer.from(text), text, 'weather.example');
			expect((csv.fault === null) !== (csv.table === null)).toBe(true);
		}),
		RUNS
	);
});
