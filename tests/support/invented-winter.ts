import charts from '../../data/charts/minimums.json' with { type: 'json' };
import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import { OPEN_WATER, type IceColumn } from '#lib/model/column.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import type { ChartMinimum, LoadCase } from '#lib/model/load-case.ts';
import type { OutlookInput } from '#lib/model/outlook.ts';
import type { Hole, Reading } from '#lib/model/reading.ts';
import { effective_m } from '#lib/model/bearing.ts';
import type { SeasonDay } from '#lib/model/season.ts';
import type { SiteDay } from '#lib/model/site-day.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

/** Builders for an invented lake, its days, holes and loads, with ordinary values to override. */

export const MINIMUMS = charts.minimums as ChartMinimum[];
export const LOADS = charts.standardLoads as LoadCase[];

export const LAKE: LakeFacts = {
	latitude: 46,
	longitude: -89,
	elevation_m: 300,
	area_km2: 3,
	meanDepth_m: 6,
	water: 'lake'
};

export function load(id: string, change: Partial<LoadCase> = {}): LoadCase {
	const standard = LOADS.find((each) => each.id === id);
	if (!standard) throw new Error(`no standard load ${id}`);
	return { ...standard, ...change };
}

export function ownLoad(mass_kg: number): LoadCase {
	return {
		id: 'own',
		name: 'Invented sled',
		mass_kg,
		use: null,
		parked_h: 0,
		wetCracks: 0,
		current: false,
		group: false,
		trailer: null,
		count: 1,
		spacing_m: null
	};
}

export function column(change: Partial<IceColumn> = {}): IceColumn {
	return { ...OPEN_WATER, ...change };
}

/** A cold January day over 30 cm of clear ice under 10 cm of snow. */
export function seasonDay(change: Partial<SeasonDay> = {}): SeasonDay {
	return {
		on: '2027-01-10',
		source: 'observed',
		air_degC: -8,
		fdd_degCd: 300,
		tdd_degCd: 0,
		freezing_degCd: 8,
		thawing_degCd: 0,
		aboveFreezing_h: 0,
		sun_W_m2: 80,
		column: column({ clear_m: 0.3, snow_m: 0.1, snowDensity_kg_m3: 250 }),
		snowKnown: true,
		gapDays: 0,
		daysSinceAnchor: null,
		anchoredBy: [],
		doubtfulReadings: [],
		meltSincePeak_m: 0,
		...change
	};
}

/** The day with bounds a quarter and a third below its column. */
export function siteDay(day: SeasonDay, change: Partial<SiteDay> = {}): SiteDay {
	const counts_m = effective_m(day.column);
	return {
		day,
		gapDays: 0,
		effective_m: counts_m,
		white_m: day.column.white_m,
		bound: {
			spot_m: 0.75 * counts_m,
			fiveSpots_m: (2 / 3) * counts_m,
			total_m: 0.75 * counts_m
		},
		site: { mean_m: counts_m, sd_m: 0.1 * counts_m },
		...change
	};
}

/** Days in a row from `from`, each with its own changes. */
export function seasonDays(from: IsoDate, changes: readonly Partial<SeasonDay>[]): SeasonDay[] {
	return changes.map((change, index) => seasonDay({ on: addDays(from, index), ...change }));
}

export function weatherDay(
	on: IsoDate,
	air_degC: number | null,
	change: Partial<WeatherDay> = {}
): WeatherDay {
	return {
		on,
		source: 'observed',
		air_degC,
		min_degC: air_degC === null ? null : air_degC - 3,
		max_degC: air_degC === null ? null : air_degC + 3,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: 0,
		snowfall_kg_m2: 0,
		landSnow_m: null,
		wind_m_s: null,
		...change
	};
}

/** A day for each temperature from `from`. */
export function weather(from: IsoDate, air_degC: readonly (number | null)[]): WeatherDay[] {
	return air_degC.map((each, index) => weatherDay(addDays(from, index), each));
}

export function hole(change: Partial<Hole> = {}): Hole {
	return {
		total_m: null,
		clear_m: null,
		white_m: null,
		snow_m: null,
		slush_m: null,
		freeboard_m: null,
		...change
	};
}

/** Holes of these whole thicknesses, all clear ice. */
export function reading(
	on: IsoDate,
	totals_m: readonly number[],
	change: Partial<Reading> = {}
): Reading {
	return {
		id: `read-${on}`,
		on,
		place: 'middle of the bay',
		kind: 'measured',
		holes: totals_m.map((total_m) => hole({ total_m, clear_m: total_m, white_m: 0, snow_m: 0.02 })),
		core: null,
		by: null,
		secondHand: false,
		remark: null,
		...change
	};
}

export function record(change: Partial<SiteWinter> = {}): SiteWinter {
	return {
		winter: '2026-27',
		freezeUpOn: '2026-12-01',
		freezeUpBy: null,
		iceOutOn: null,
		events: [],
		...change
	};
}

/** An invented lake in steady frost since 1 December, asked about on the last day of its weather. */
export function asked(
	air_degC: readonly (number | null)[],
	change: Partial<OutlookInput> = {}
): OutlookInput {
	const days = weather('2026-12-01', air_degC);
	const last = days.at(-1)?.on ?? '2026-12-01';
	return {
		lakeId: 'invented',
		site: 'main',
		lake: LAKE,
		record: record(),
		weather: days,
		readings: [],
		loads: LOADS,
		minimums: MINIMUMS,
		chartSet: 'strict',
		asOf: last,
		until: last,
		...change
	};
}
