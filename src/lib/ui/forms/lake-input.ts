import type { LakeFacts } from '#lib/model/lake.ts';
import type { Units } from '../units-setting.ts';
import type { FormInput, FormValues } from './form-input.ts';
import { readDegrees, splitPosition } from './position.ts';
import { fieldText, fieldUnit } from './quantity.ts';

/** A lake as the form gives it, in SI, still to pass the schema of the service. */
export interface LakeInput {
	name: string;
	latitude: number;
	longitude: number;
	elevation_m: number | null;
	area_km2: number | null;
	meanDepth_m: number | null;
	water: string;
	timeZone: string | null;
}

/** A stored lake as its form shows it. */
export function lakeValues(
	lake: LakeFacts & { name: string; timeZone: string },
	units: Units
): FormValues {
	const [height, area] = [fieldUnit('height', units), fieldUnit('area', units)];
	return {
		name: lake.name,
		latitude: String(lake.latitude),
		longitude: String(lake.longitude),
		water: lake.water,
		[`area_${area.suffix}`]: fieldText(lake.area_km2, area),
		[`meanDepth_${height.suffix}`]: fieldText(lake.meanDepth_m, height),
		[`elevation_${height.suffix}`]: fieldText(lake.elevation_m, height),
		timeZone: lake.timeZone
	};
}

/** Reads the lake form; a pasted pair of coordinates is taken apart. */
export function readLake(input: FormInput, stored?: LakeFacts): LakeInput {
	const typed = splitPosition(input.values['latitude'] ?? '', input.values['longitude'] ?? '');
	Object.assign(input.values, typed);
	return {
		name: input.required('name', 'Give the lake a name.'),
		latitude: degrees(input, 'latitude', 90, stored?.latitude),
		longitude: degrees(input, 'longitude', 180, stored?.longitude),
		elevation_m: input.quantity('elevation', 'height', {
			from: -500,
			to: 9000,
			stored: stored?.elevation_m
		}),
		area_km2: input.quantity('area', 'area', { from: 0, to: 500_000, stored: stored?.area_km2 }),
		meanDepth_m: input.quantity('meanDepth', 'height', {
			from: 0,
			to: 2000,
			stored: stored?.meanDepth_m
		}),
		water: input.text('water') ?? 'lake',
		timeZone: timeZone(input)
	};
}

function degrees(
	input: FormInput,
	axis: 'latitude' | 'longitude',
	limit: number,
	stored: number | undefined
): number {
	const text = input.required(
		axis,
		`Type the ${axis}, like ${axis === 'latitude' ? '61.2' : '25.1'}.`
	);
	if (text === '' || text === String(stored)) return stored ?? 0;
	const value = readDegrees(text, axis);
	if (value === null) {
		const letters = axis === 'latitude' ? '61°12′N' : '25°06′E';
		input.refuse(axis, `“${text}” is not a ${axis}. Type degrees, like 61.2, or ${letters}.`);
	} else if (Math.abs(value) > limit) {
		input.refuse(
			axis,
			`${value} is outside ${-limit} to ${limit}. Is it the other one of the two?`
		);
	}
	return value ?? 0;
}

/** `null` takes the zone from the position. */
function timeZone(input: FormInput): string | null {
	const text = input.text('timeZone');
	if (text === null) return null;
	try {
		return new Intl.DateTimeFormat('en', { timeZone: text }).resolvedOptions().timeZone && text;
	} catch {
		input.refuse(
			'timeZone',
			`“${text}” is not a time zone. Leave it empty, or type one like Etc/GMT-2.`
		);
		return null;
	}
}
