import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import { runEnsemble, type EnsembleInput } from '#lib/model/ensemble/run.ts';
import type { Recalibration } from '#lib/model/ensemble/recalibrate.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { INVENTED_LAKE, seededWinter } from './seeded-winter.ts';

/** First day of ice of every invented ensemble. */
export const FREEZE_UP: IsoDate = '2026-11-20';

/** The day so many days after freeze-up. */
export function dayAt(index: number): IsoDate {
	return addDays(FREEZE_UP, index);
}

/** An invented winter of steady frost with some snow, all of it reported. */
export function coldWinter(days: number, seed = 1): WeatherDay[] {
	return seededWinter(FREEZE_UP, days, { seed, mean_degC: -9, swing_K: 6, snow_kg_m2: 1 });
}

/** An ensemble of an invented lake through an invented winter, without readings or memory. */
export function ensembleInput(change: Partial<EnsembleInput> = {}): EnsembleInput {
	const weather = change.weather ?? coldWinter(60);
	return {
		lake: INVENTED_LAKE,
		freezeUpOn: FREEZE_UP,
		freezeUpBy: null,
		until: addDays(weather.at(-1)?.on ?? FREEZE_UP, 1),
		weather,
		scenarios: [],
		events: [],
		readings: [],
		memory: null,
		members: 300,
		seed: 7,
		...change
	};
}

/** What is kept of a day: whole thicknesses of the members themselves and of their holes. */
export interface KeptDay {
	on: IsoDate;
	site_m: Float64Array;
	hole_m: Float64Array;
	before_m: Float64Array | null;
	recalibrations: readonly Recalibration[];
}

/** Runs an ensemble and keeps copies of its days. */
export function follow(input: EnsembleInput): KeptDay[] {
	const days: KeptDay[] = [];
	runEnsemble(input, ({ on, members, holes, before, recalibrations }) => {
		days.push({
			on,
			site_m: members.clear_m.map((clear_m, i) => clear_m + (members.white_m[i] ?? 0)),
			hole_m: holes.total_m.slice(),
			before_m: before?.total_m.slice() ?? null,
			recalibrations
		});
	});
	return days;
}

/** Runs an ensemble to the end of its weather. */
export function lastDay(input: EnsembleInput): KeptDay {
	const last = follow(input).at(-1);
	if (!last) throw new Error('the ensemble has no day');
	return last;
}

export function quantile(values: ArrayLike<number>, share: number): number {
	const sorted = Float64Array.from(values).toSorted();
	return sorted[Math.round(share * (sorted.length - 1))] ?? NaN;
}

export const median = (values: ArrayLike<number>): number => quantile(values, 0.5);

/** Width of the band from 5 to 95 %. */
export function band(values: ArrayLike<number>): number {
	return quantile(values, 0.95) - quantile(values, 0.05);
}

export function mean(values: ArrayLike<number>): number {
	let sum = 0;
	for (let i = 0; i < values.length; i++) sum += values[i] ?? NaN;
	return sum / values.length;
}

export function spread(values: ArrayLike<number>): number {
	const middle = mean(values);
	const squares = Float64Array.from(values).map((value) => (value - middle) ** 2);
	return Math.sqrt((mean(squares) * values.length) / (values.length - 1));
}

export function correlation(a: ArrayLike<number>, b: ArrayLike<number>): number {
	const [meanA, meanB] = [mean(a), mean(b)];
	const products = Float64Array.from(a, (value, i) => (value - meanA) * ((b[i] ?? NaN) - meanB));
	return (mean(products) * a.length) / (a.length - 1) / (spread(a) * spread(b));
}
