import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import { dayFromHours, type DayValues, type WeatherHour } from '#lib/model/hours-to-days.ts';
import { clockDoubt_h, compareDays, unitDoubt } from '#lib/model/weather-doubt.ts';
import type { Context } from '../../context.ts';
import type { Fault } from '../../weather/source/contract.ts';
import { joinDays, joinHours } from '../joining.ts';
import { daySpan, localDay } from '../local-day.ts';
import { nextTurn } from '../next-turn.ts';
import { clockFault, unitFault } from '../refresh/doubt-words.ts';
import { readTrust, type Trust } from '../trust.ts';

/** What a source told, beside what is stored from elsewhere. */
export interface Comparison {
	/** Days that both have a temperature of. */
	days: number;
	/** How much warmer the source is in the mean. */
	bias_K: number;
	/** Standard deviation of the differences. */
	spread_K: number;
	/** What it is compared with, in words. */
	with: string;
	faults: Fault[];
}

export interface Told {
	name: string;
	hours: readonly WeatherHour[];
	days: readonly DayValues[];
	/** Left out of what it is compared with. */
	exceptSourceId?: string;
}

/** Hours compared at most: enough for a clock, and quickly read. */
const LONGEST_D = 60;

/** Compares with what other origins have stored of the same days; `null` where there is too little. */
export async function compareWithStored(
	ctx: Context,
	lakeId: string,
	told: Told
): Promise<Comparison | null> {
	const trust = others(await readTrust(ctx, lakeId), told.exceptSourceId);
	const ours = [...daysOf(told, trust.timeZone), ...told.days].toSorted((a, b) =>
		a.on < b.on ? -1 : 1
	);
	const last = ours.at(-1)?.on;
	if (last === undefined || trust.origins.length === 0) return null;
	const from = addDays(last, -LONGEST_D);
	await nextTurn();
	const theirs = await joinDays(ctx.db, trust, from, last);
	const compared = compareDays(ours, theirs);
	if (compared === null) return null;
	const other = nameOf(trust);
	await nextTurn();
	const unit = unitDoubt(ours, theirs);
	const shift_h = unit ? null : await clockShift_h(ctx, trust, told, from, last);
	return {
		...compared,
		with: other,
		faults: [
			...(unit ? [unitFault(unit, told.name, other)] : []),
			...(shift_h === null ? [] : [clockFault(shift_h, told.name, other)])
		]
	};
}

function others(trust: Trust, exceptSourceId: string | undefined): Trust {
	const origins = trust.origins.filter(
		(origin) => origin.kind === 'csv' || origin.sourceId !== exceptSourceId
	);
	return { ...trust, origins };
}

function nameOf({ origins }: Trust): string {
	return origins.length === 1 && origins[0]?.kind === 'csv' ? 'your CSV' : 'the stored weather';
}

/** The whole days of its hours. */
function daysOf({ hours }: Told, timeZone: string): DayValues[] {
	const [first, last] = [hours.at(0), hours.at(-1)];
	if (!first || !last) return [];
	const days: DayValues[] = [];
	const end = localDay(new Date(last.at_s * 1000), timeZone);
	let on = localDay(new Date(first.at_s * 1000), timeZone);
	for (let next = 0; on <= end; on = addDays(on, 1)) {
		const span = daySpan(on, timeZone);
		const start = next;
		while ((hours[next]?.at_s ?? Infinity) < span.end_s) next++;
		days.push(dayFromHours(span, hours.slice(start, next)));
	}
	return days;
}

async function clockShift_h(
	ctx: Context,
	trust: Trust,
	{ hours }: Told,
	from: IsoDate,
	to: IsoDate
): Promise<number | null> {
	if (hours.length === 0) return null;
	const span = [daySpan(from, trust.timeZone).start_s, daySpan(to, trust.timeZone).end_s] as const;
	return clockDoubt_h(hours, await joinHours(ctx.db, trust, ...span));
}
