import { isIsoDate } from '#lib/model/calendar.ts';
import { day } from '../format/day.ts';
import { depth } from '../format/length.ts';
import { mass } from '../format/mass.ts';
import type { Units } from '../units-setting.ts';

/** Lengths that nobody reads in centimetres. */
const IN_METRES = new Set(['elevation_m', 'mean_depth_m', 'leg_m', 'spacing_m', 'trailer_apart_m']);
const FLAGS = /^(is_|has_|in_|crosses_|corrects_|starts_|ends_|second_hand)/;

/** What a column is called where a person reads it. */
const LABELS: Readonly<Record<string, string>> = {
	area_km2: 'area',
	by_whom: 'by',
	chart_set: 'charts',
	checked_on: 'looked at',
	clear_m: 'clear ice',
	corrects_elevation: 'corrected for elevation',
	density_kg_m3: 'density',
	elevation_m: 'elevation',
	freeboard_m: 'water level',
	freeze_up_by: 'freeze-up at the latest',
	freeze_up_on: 'freeze-up',
	ice_out_on: 'ice-out',
	is_on: 'in use',
	lead_d: 'days of lead',
	mass_kg: 'mass',
	mean_depth_m: 'mean depth',
	parent_id: 'made on',
	position: 'place in the order',
	refroze_on: 'frozen again',
	removal_on: 'removal date',
	second_hand: 'told by somebody else',
	site_id: 'site',
	slush_m: 'slush',
	snow_m: 'snow',
	time_zone: 'time zone',
	total_m: 'whole ice',
	trailer_kg: 'trailer',
	water_m: 'water',
	white_m: 'white ice'
};

export function labelOf(column: string): string {
	return LABELS[column] ?? column.replace(/_(m|kg|h|d|km2)$/, '').replaceAll('_', ' ');
}

/** A stored value as a person reads it. */
export function valueWords(column: string, value: string | number | null, units: Units): string {
	if (value === null) return 'nothing';
	if (typeof value === 'string') return isIsoDate(value) ? day(value) : `“${value}”`;
	if (FLAGS.test(column)) return value === 1 ? 'yes' : 'no';
	if (IN_METRES.has(column)) return `${value} m`;
	if (column.endsWith('_m')) return depth(value, units);
	if (column.endsWith('_kg')) return mass(value, units);
	if (column.endsWith('_km2')) return `${value} km²`;
	return String(value);
}
