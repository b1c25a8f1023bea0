import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { Forecast, ForecastDay, ForecastLoad } from '#lib/model/forecast.ts';

/** The part of a forecast that a change is judged by. */
export interface IfAnswer {
	/** Two weeks on, or the last day before that. */
	ahead: { on: IsoDate; p05_m: number; p50_m: number; p95_m: number } | null;
	/** The thickest day from today on. */
	peak: { on: IsoDate; p50_m: number } | null;
	/** Where it is not, no dates are named. */
	snowKnown: boolean;
	loads: IfLoad[];
}

export type IfLoad = Pick<
	ForecastLoad,
	'id' | 'name' | 'required_m' | 'expectedFrom' | 'likelyFrom' | 'until'
>;

const AHEAD_d = 14;

export function answerOf({ asOf, days, loads, cautions }: Forecast): IfAnswer {
	const coming = days.filter(({ on, total_m }) => on >= asOf && total_m.p50 !== null);
	const limit = addDays(asOf, AHEAD_d);
	return {
		ahead: aheadOf(coming.findLast(({ on }) => on <= limit)),
		peak: peakOf(coming),
		snowKnown: cautions.every(({ code }) => code !== 'snowUnknown'),
		loads: loads.map(({ id, name, required_m, expectedFrom, likelyFrom, until }) => ({
			id,
			name,
			required_m,
			expectedFrom,
			likelyFrom,
			until
		}))
	};
}

function aheadOf(day: ForecastDay | undefined): IfAnswer['ahead'] {
	if (!day) return null;
	const { p05, p50, p95 } = day.total_m;
	return p05 === null || p50 === null || p95 === null
		? null
		: { on: day.on, p05_m: p05, p50_m: p50, p95_m: p95 };
}

function peakOf(days: readonly ForecastDay[]): IfAnswer['peak'] {
	return days.reduce<IfAnswer['peak']>((most, { on, total_m }) => {
		const p50_m = total_m.p50 ?? 0;
		return most === null || p50_m > most.p50_m ? { on, p50_m } : most;
	}, null);
}
