import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Ask, Fault } from '../contract.ts';
import { dayAt } from '../lake-days.ts';
import type { Mapped } from '../read/mapped.ts';
import type { Call } from '../schema.ts';
import { condemnedBy } from './condemned.ts';
import { judgeForecast } from './judge-forecast.ts';
import { judgeRecord } from './judge-record.ts';
import { overBy } from './made-by.ts';
import { madeAhead } from './stale.ts';
import { tallyFaults } from './tally-faults.ts';
import { unitDoubts } from './unit-doubt.ts';
import { withoutRole } from './without-role.ts';

export type Question = Pick<Ask, 'from' | 'to' | 'part' | 'timeZone' | 'longitude' | 'now'>;
export type Judging = Pick<Call, 'mapping' | 'part' | 'reach'>;

/** What may be used of an answer, and what is to be said of it. */
export interface Judged {
	hours: WeatherHour[];
	days: DayValues[];
	faults: Fault[];
}

/** `madeAt`: when the answer was made, never in the future. */
export function judge(call: Judging, ask: Question, mapped: Mapped, madeAt: Date): Judged {
	const ahead = mapped.issuedAt && madeAhead(mapped.issuedAt, ask.now);
	const said = [...(ahead ? [ahead] : []), ...tallyFaults(mapped.tally)];
	const doubts = unitDoubts(call.mapping, mapped);
	const condemned = condemnedBy(call.mapping, mapped, doubts);
	if (condemned.length > 0) return { hours: [], days: [], faults: [...condemned, ...said] };
	let left: Pick<Mapped, 'hours' | 'days'> = mapped;
	for (const { role } of doubts) left = withoutRole(left, role);
	const parted = partOf(left, mapped.dayEnds_s, ask);
	const { hours, days, faults } =
		ask.part === 'history'
			? judgeRecord(call, ask, overBy(parted, mapped.dayEnds_s, madeAt), mapped)
			: judgeForecast(ask, parted, mapped, madeAt);
	return { hours, days, faults: [...doubts.map(({ fault }) => fault), ...faults, ...said] };
}

/**
 * Ended hours and days for history, the running and coming ones for a forecast. A day has ended once
 * it has both by the lake's calendar and by its source's: one told in UTC goes on after it is over at a
 * lake further east.
 */
function partOf(
	{ hours, days }: Pick<Mapped, 'hours' | 'days'>,
	dayEnds_s: Mapped['dayEnds_s'],
	{ part, now, timeZone }: Question
): Pick<Mapped, 'hours' | 'days'> {
	const now_s = now.getTime() / 1000;
	const today = dayAt(now, timeZone);
	const isOver = (on: string): boolean => on < today && (dayEnds_s.get(on) ?? Infinity) <= now_s;
	const isPast = part === 'history';
	return {
		hours: hours.filter(({ at_s }) => at_s + 3600 <= now_s === isPast),
		days: days.filter(({ on }) => isOver(on) === isPast)
	};
}
