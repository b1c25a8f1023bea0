import { grouped } from '#lib/ui/format/number.ts';
import type { Units } from '#lib/ui/units-setting.ts';
import type { StationItem } from './origin-item.ts';

const M_PER_MILE = 1609.344;
const M_PER_FOOT = 0.3048;
/** Nearer than this, a height or a correction says nothing. */
const LEVEL_m = 1;
const SLIGHT_K = 0.05;

/** Where a source's temperatures are taken, and what follows from that; `null` where it tells nothing. */
export function stationSentence(station: StationItem, units: Units): string | null {
	const { name, asked, distance_m, higherBy_m, elevation_m } = station;
	const place = name ?? (asked === null ? null : `station ${asked}`);
	const away = distance_m === null ? null : `${distance(distance_m, units)} away`;
	if (place === null && away === null && elevation_m === null) return null;
	const where = [place, away, higherBy_m === null ? null : height(higherBy_m, units)]
		.filter(Boolean)
		.join(', ');
	const lacksLake =
		elevation_m !== null && higherBy_m === null
			? ` It lies ${metres(elevation_m, units)} above the sea; the lake’s own elevation is not entered, so they are taken as they are. Where the lake lies lower it is warmer, and its ice thinner than estimated.`
			: '';
	return `Its temperatures are those of ${where === '' ? 'a place that it does not name' : where}.${lacksLake}`;
}

/** What the difference in height does to its temperatures; `null` where there is none to speak of. */
export function correctionSentence(station: StationItem, units: Units): string | null {
	const { possibleCorrection_K: step_K, corrects } = station;
	if (Math.abs(step_K) < SLIGHT_K) return null;
	const by = `${degrees(Math.abs(step_K), units)} ${step_K > 0 ? 'warmer' : 'colder'}`;
	const rule = `for the difference in height, at 6.5 °C a kilometre`;
	return corrects
		? `They are made ${by} ${rule}.`
		: `They are taken as they are; by the difference in height the lake would be ${by}.`;
}

/** @example distance(3240, metric) // => '3.2 km' */
export function distance(away_m: number, units: Units): string {
	const [value, unit] =
		units.measure === 'metric'
			? ([away_m / 1000, 'km'] as const)
			: ([away_m / M_PER_MILE, away_m >= M_PER_MILE * 1.5 ? 'miles' : 'mile'] as const);
	return value < 10 ? `${value.toFixed(1)} ${unit}` : `${grouped(value)} ${unit}`;
}

function height(higherBy_m: number, units: Units): string {
	if (Math.abs(higherBy_m) < LEVEL_m) return 'as high as the lake';
	return `${metres(Math.abs(higherBy_m), units)} ${higherBy_m > 0 ? 'higher' : 'lower'} than the lake`;
}

function metres(value_m: number, units: Units): string {
	return units.measure === 'metric'
		? `${grouped(value_m)} m`
		: `${grouped(value_m / M_PER_FOOT)} ft`;
}

function degrees(step_K: number, units: Units): string {
	return units.measure === 'metric' ? `${step_K.toFixed(1)} °C` : `${(step_K * 1.8).toFixed(1)} °F`;
}
