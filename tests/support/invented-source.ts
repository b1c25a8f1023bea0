import type { Context } from '../../src/lib/server/context.ts';
import { newSource } from '../../src/lib/server/services/sources/input.ts';
import { lakeOrderInput, setLakeOrder } from '../../src/lib/server/services/sources/lake-order.ts';
import { createSource, type SourceRecord } from '../../src/lib/server/services/sources/sources.ts';
import type { WeatherHour } from '../../src/lib/model/hours-to-days.ts';
import type {
	Ask,
	SourceAnswer,
	WeatherSource
} from '../../src/lib/server/weather/source/contract.ts';
import { freshContext } from './fresh-context.ts';

/** An invented service with arrays side by side; it answers nothing, as its name resolves nowhere. */
export function inventedSource(changes: Partial<WeatherSource> = {}): WeatherSource {
	const mapping: WeatherSource['calls'][number]['mapping'] = {
		layout: 'columns',
		step: 'hourly',
		time: { path: '$.hourly.time', form: 'iso', zone: 'utc', stamp: 'start' },
		values: {
			air: { path: '$.hourly.air', unit: '°C' },
			precipitation: { path: '$.hourly.rain', unit: 'mm' }
		}
	};
	const call = (part: 'history' | 'forecast', path: string) => ({
		part,
		address: `https://weather.invalid/${path}?lat={latitude}&lon={longitude}&from={from}&to={to}`,
		format: 'json' as const,
		chunk_d: 31,
		reach: part === 'history' ? { lag_h: 1 } : { ahead_d: 10 },
		mapping
	});
	return {
		id: 'invented-weather',
		name: 'Invented Weather',
		homepage: 'https://weather.invalid/',
		terms: { attribution: 'Weather by Invented Weather', note: 'Invented for tests.' },
		limits: { perDay: 1000, minInterval_min: 10 },
		needsKey: false,
		wantsContact: false,
		calls: [call('history', 'past'), call('forecast', 'ahead')],
		...changes
	};
}

/** One hour after the other. */
export function hoursFrom(
	from: string,
	air: readonly (number | null)[],
	values: Partial<WeatherHour> = {}
): WeatherHour[] {
	const from_s = Date.parse(from) / 1000;
	return air.map((air_degC, index) => ({
		at_s: from_s + index * 3600,
		air_degC,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null,
		...values
	}));
}

export function answered(changes: Partial<SourceAnswer> = {}): SourceAnswer {
	return {
		outcome: 'ok',
		hours: [],
		days: [],
		issuedAt: null,
		isIssueTold: true,
		station: null,
		hasPrecipitation: true,
		faults: [],
		validators: null,
		freshUntilAt: null,
		retryAfter_s: null,
		calls: 1,
		bytes: 1000,
		...changes
	};
}

export type Answer = (source: WeatherSource, ask: Ask) => SourceAnswer | Promise<SourceAnswer>;

/** A weather service that answers as it is told, and remembers what it was asked. */
export interface FakeService {
	asks: { source: string; ask: Ask; isBoth?: true }[];
	answer: Answer;
	/** How long each wait for a turn was. */
	waits_ms: number[];
}

/** A context whose clock can be set and whose weather services are faked. */
export async function contextWithService(
	now: string,
	answer: Answer = measuredAsColdAs(-8)
): Promise<{ ctx: Context; service: FakeService; setNow: (at: string) => void }> {
	const fresh = await freshContext(now);
	let at = new Date(now);
	const service: FakeService = { asks: [], answer, waits_ms: [] };
	const ctx: Context = {
		...fresh,
		now: () => at,
		weather: {
			...fresh.weather,
			random: () => 0.5,
			async fetchWeather(source, ask) {
				service.asks.push({ source: source.id, ask });
				return service.answer(source, ask);
			},
			async fetchBoth(source, ask) {
				const past = { ...ask, part: 'history' as const };
				service.asks.push({ source: source.id, ask: past, isBoth: true });
				const history = await service.answer(source, past);
				const forecast = await service.answer(source, { ...ask, part: 'forecast' });
				return { history, forecast: { ...forecast, calls: 0 } };
			},
			async wait(duration_ms) {
				service.waits_ms.push(duration_ms);
			}
		}
	};
	const setNow = (text: string) => {
		at = new Date(text);
	};
	return { ctx, service, setNow };
}

const S_PER_DAY = 86_400;

/** Tells every asked hour, about one temperature: measured ones that have ended, or those to come. */
export function measuredAsColdAs(mean_degC: number, changes: Partial<SourceAnswer> = {}): Answer {
	return (_source, { part, from, to, now }) => {
		const now_s = Math.floor(now.getTime() / 3_600_000) * 3600;
		const from_s = Date.parse(from) / 1000;
		const to_s = Date.parse(to) / 1000 + S_PER_DAY;
		const [start_s, end_s] =
			part === 'history' ? [from_s, Math.min(to_s, now_s)] : [Math.max(from_s, now_s), to_s];
		const count = Math.max(0, (end_s - start_s) / 3600);
		const hours = Array.from({ length: count }, (_, index): WeatherHour => {
			const at_s = start_s + index * 3600;
			const wave_K = 2 * Math.cos((2 * Math.PI * (at_s - 14 * 3600)) / S_PER_DAY);
			return {
				at_s,
				air_degC: mean_degC + wave_K,
				precipitation_kg_m2: 0.1,
				snowfall_kg_m2: null,
				landSnow_m: null,
				wind_m_s: null
			};
		});
		const issuedAt = part === 'forecast' ? now : null;
		return answered({ hours, issuedAt, ...changes });
	};
}

/** Makes a source and lets a lake use it, after what was imported unless `order` says otherwise. */
export async function useSource(
	ctx: Context,
	lakeId: string,
	source: WeatherSource = inventedSource(),
	order: readonly string[] = ['csv', source.id]
): Promise<SourceRecord> {
	const record = await createSource(ctx, newSource.parse({ source }));
	await orderOf(ctx, lakeId, order);
	return record;
}

export async function orderOf(
	ctx: Context,
	lakeId: string,
	order: readonly string[],
	changes: { correctsElevation?: boolean; station?: string } = {}
) {
	const uses = order.map((source) => ({ source, ...changes }));
	return setLakeOrder(ctx, lakeId, lakeOrderInput.parse({ order: uses }));
}

/** A use of a source as it stands, to store answers for. */
export async function askingOf({ db }: Context, useId = 1) {
	const row = await db
		.selectFrom('lake_source')
		.innerJoin('source', 'source.id', 'lake_source.source_id')
		.innerJoin('lake', 'lake.id', 'lake_source.lake_id')
		.selectAll('lake_source')
		.select(['config', 'latitude', 'longitude'])
		.where('lake_source.id', '=', useId)
		.executeTakeFirstOrThrow();
	const { config, latitude, longitude, ...use } = row;
	const mapping = (JSON.parse(config) as WeatherSource).calls[0]?.mapping;
	if (!mapping) throw new Error('the source has no call');
	return { use, mapping, asked: { useId, config, station: use.station, latitude, longitude } };
}
