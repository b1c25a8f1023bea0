import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Decimal } from '../../cells/numbers.ts';
import type { ValueRole } from '../../cells/units.ts';
import type { Station } from '../contract.ts';
import type { Mapping } from '../schema.ts';
import type { WallClock } from './clock-of.ts';
import type { Column } from './columns.ts';
import type { Samples } from './role-values.ts';
import type { Tally } from './tally.ts';

/** Whose weather an answer is read as. */
export interface Place {
	timeZone: string;
	from: IsoDate;
	to: IsoDate;
}

/** What an answer says of the days asked for. */
export interface Mapped {
	hours: WeatherHour[];
	days: DayValues[];
	/** When each day ends by the clock that its source counts days by. */
	dayEnds_s: Map<IsoDate, number>;
	station: Station | null;
	issuedAt: Date | null;
	tally: Tally;
	/** Numbers as they were given, before their unit. */
	samples: Map<ValueRole, Samples>;
}

/** What the columns of an answer are read with. */
export interface Reading {
	mapping: Mapping;
	place: Place;
	/** `null` where every time carries its offset. */
	clock: WallClock | null;
	decimal: Decimal;
}

export function samplesOf({ samples }: Mapped, role: ValueRole): Samples {
	const known = samples.get(role) ?? [];
	samples.set(role, known);
	return known;
}

/** The columns of each role, the one that fills in behind the one that leads. */
export function byRole(columns: readonly Column[]): Map<ValueRole, Column[]> {
	const roles = new Map<ValueRole, Column[]>();
	for (const column of columns) roles.set(column.role, [...(roles.get(column.role) ?? []), column]);
	return roles;
}

export function isRainAlone({ values }: Mapping): boolean {
	return values.precipitation?.unit.endsWith('rain') ?? false;
}
