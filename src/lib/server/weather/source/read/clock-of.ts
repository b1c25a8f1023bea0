import { LakeClock } from '../../cells/zone.ts';
import type { Mapping } from '../schema.ts';
import { isTimeZone } from '../lake-days.ts';
import type { Answer } from './columns.ts';
import { valueAt } from './facts.ts';

/** What times without an offset of their own mean: the instants at which the clock showed them. */
export interface WallClock {
	instants(wall_s: number): number[];
}

/** The clock of an answer, `null` where every time carries its offset, or why there is none. */
export function clockOf(
	zone: Mapping['time']['zone'],
	lakeZone: string,
	answer: Answer
): WallClock | null | string {
	if (zone === 'utc') return fixed(0);
	if (zone === 'lake') return new LakeClock(lakeZone, 'local');
	if (zone === 'offset') return null;
	if ('name' in zone) return named(zone.name, 'The mapping');
	const found = valueAt(zone.path, answer);
	if (typeof found === 'number' && Math.abs(found) <= 14 * 3600) return fixed(found);
	return typeof found === 'string'
		? named(found, `The answer at ${zone.path}`)
		: `No time zone was found at ${zone.path}; choose UTC, the zone of the lake, or another place.`;
}

function named(name: string, where: string): WallClock | string {
	return isTimeZone(name)
		? new LakeClock(name, 'local')
		: `${where} names a time zone that is not known, “${name.slice(0, 40)}”; use a name such as Europe/Oslo, or UTC.`;
}

function fixed(offset_s: number): WallClock {
	return { instants: (wall_s) => [wall_s - offset_s] };
}
