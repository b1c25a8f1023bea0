import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { Forecast, ForecastDay, ForecastLoad, Quantiles } from '#lib/model/forecast.ts';
import type { DaySource } from '#lib/model/weather.ts';
import { inventedLoad } from './invented-view.ts';

const FREEZE_UP = '2026-11-27';
const DAYS = 165;
const TODAY = 60;
const FORECAST = 10;
/** A warm spell at the end of the forecast, then the thaw of spring. */
const WARM = [66, 68] as const;

/** A whole invented winter with its doubt, as of 26 January: ten forecast days, then past winters. */
export function inventedFuture(changes: Partial<Forecast> = {}): Forecast {
	return {
		lake: 'pinder-lake',
		site: 'main',
		winter: '2026-27',
		asOf: addDays(FREEZE_UP, TODAY),
		days: Array.from({ length: DAYS }, (_, index) => futureDay(index)),
		loads: [
			futureLoad({ id: 'on-foot', name: 'On foot, alone', mass_kg: 100 }, 0.15),
			futureLoad({ id: 'group', name: 'Group, spread out', mass_kg: 400 }, 0.2),
			futureLoad({ id: 'snowmobile', name: 'Snowmobile', mass_kg: 400 }, 0.25),
			futureLoad({ id: 'car', name: 'Car', mass_kg: 1800 }, 0.38),
			futureLoad({ id: 'pickup', name: 'Pickup', mass_kg: 2900 }, 0.48),
			futureLoad({ id: 'shelter', name: 'Truck with shelter, parked', mass_kg: 6000 }, null)
		],
		iceOut: null,
		leaving: null,
		memoryText: null,
		cautions: [],
		...changes
	};
}

/** Grows by the root of time to a peak in March, then thins by 1.5 cm a day. */
function futureDay(index: number): ForecastDay {
	const clear_m = estimate_m(index) * 0.8;
	const white_m = estimate_m(index) * 0.2;
	const snow_m = index < 10 || index > 120 ? 0 : 0.05 + 0.03 * Math.sin(index / 6);
	return {
		on: addDays(FREEZE_UP, index),
		source: sourceOf(index),
		air_degC: -8 + 6 * Math.sin(index / 9) + (index > 115 ? 0.25 * (index - 115) : 0),
		fdd_degCd: Math.min(index, 115) * 7.5,
		tdd_degCd: Math.max(0, index - 110) * 2,
		clear_m: quantiles(clear_m, 0.8 * spread_m(index)),
		white_m: quantiles(white_m, 0.4 * spread_m(index)),
		snow_m: quantiles(snow_m, 0.03),
		slush_m: quantiles(0, 0),
		total_m: quantiles(estimate_m(index), spread_m(index)),
		effective_m: quantiles(clear_m + white_m / 2, spread_m(index)),
		bound: {
			total_m: quantiles(estimate_m(index), spread_m(index)).p10 ?? 0,
			effective_m: quantiles(clear_m + white_m / 2, spread_m(index)).p10 ?? 0
		}
	};
}

function futureLoad(about: Partial<ForecastLoad>, required_m: number | null): ForecastLoad {
	const days = Array.from({ length: DAYS }, (_, index) => ({
		on: addDays(FREEZE_UP, index),
		pThickness: required_m === null ? null : chance(index, required_m),
		pThaw: thawChance(index)
	}));
	const firstOf3 = (least: number): IsoDate | null =>
		days.find((_, index) =>
			days.slice(index, index + 3).every(({ pThickness }) => (pThickness ?? 0) >= least)
		)?.on ?? null;
	return inventedLoad({
		...about,
		required_m,
		requiredOther_m: required_m,
		status: required_m === null ? 'askAnEngineer' : 'expectedNotDrilled',
		expectedFrom: firstOf3(0.5),
		likelyFrom: firstOf3(0.9),
		until: days.findLast(({ pThickness }) => (pThickness ?? 0) >= 0.5)?.on ?? null,
		days
	});
}

function estimate_m(index: number): number {
	const grown_m = 0.048 * Math.sqrt(Math.min(index, 118));
	return Math.max(0, grown_m - 0.015 * Math.max(0, index - 118));
}

function spread_m(index: number): number {
	const ahead_d = Math.max(0, index - TODAY);
	return index === 0 ? 0 : 0.015 + 0.0002 * index + 0.00055 * ahead_d;
}

function quantiles(p50: number, sigma_m: number): Quantiles {
	const at = (z: number) => Math.max(0, p50 + z * sigma_m);
	return { p05: at(-1.645), p10: at(-1.282), p50, p90: at(1.282), p95: at(1.645) };
}

/** A logistic stand-in for the normal distribution. */
function chance(index: number, required_m: number): number {
	if (index === 0) return 0;
	const z = (estimate_m(index) * 0.9 - required_m) / spread_m(index);
	return 1 / (1 + Math.exp(-1.7 * z));
}

function thawChance(index: number): number {
	if (index >= WARM[0] && index <= WARM[1]) return 0.7;
	if (index <= TODAY) return 0;
	return Math.min(1, Math.max(0.1, (index - 105) / 15));
}

function sourceOf(index: number): DaySource {
	if (index < TODAY) return 'observed';
	return index < TODAY + FORECAST ? 'forecast' : 'climate';
}
