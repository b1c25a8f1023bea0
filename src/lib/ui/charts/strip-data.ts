import type { IsoDate } from '#lib/model/calendar.ts';
import type { Forecast, ForecastLoad } from '#lib/model/forecast.ts';
import { borders, type Border } from './regions.ts';

const DAY_RULES = ['warmSpell', 'coldSnap'] as const;

export type DayRule = (typeof DAY_RULES)[number];

/** A load's winter as the strip, its sentence and its table need it. */
export interface StripLoad extends Pick<
	ForecastLoad,
	'id' | 'name' | 'required_m' | 'expectedFrom' | 'likelyFrom' | 'until'
> {
	/** A rule of the day asked for that is in `required_m`, though not in the dates. */
	dayRule: DayRule | null;
	/** Chance in percent that the chart minimum is met, a day each; `null` where not estimated. */
	met_percent: (number | null)[];
	/** Chance in percent that a warm-spell rule is in force. */
	thaw_percent: (number | null)[];
}

/** All that the winter strip shows, small enough to travel with a page. */
export interface StripData {
	/** First and last day. */
	from: IsoDate;
	to: IsoDate;
	asOf: IsoDate;
	borders: Border[];
	/** Where it is not, no dates are named. */
	snowKnown: boolean;
	/** The ice has gone: no warm spell is told to close open water. */
	isOpen: boolean;
	loads: StripLoad[];
}

export interface StripFacts {
	today: IsoDate;
	snowKnown: boolean;
	/** Its ice has gone by the day of asking. */
	isOpen: boolean;
	/** What days past the forecast go by. */
	climate: string;
}

/** `null` for a winter without days. Chances are rounded down, so that none looks larger than it is. */
export function stripData(
	forecast: Forecast,
	{ today, snowKnown, isOpen, climate }: StripFacts
): StripData | null {
	const { days, asOf } = forecast;
	const [first, last] = [days[0], days.at(-1)];
	if (!first || !last) return null;
	return {
		from: first.on,
		to: last.on,
		asOf,
		borders: borders(days, { asOf, today, climate }).filter(
			({ on }) => on >= first.on && on <= last.on
		),
		snowKnown,
		isOpen,
		loads: forecast.loads.map((load) => stripLoad(load, days))
	};
}

function stripLoad(load: ForecastLoad, days: readonly { on: IsoDate }[]): StripLoad {
	const { id, name, required_m, expectedFrom, likelyFrom, until } = load;
	const byDay = new Map(load.days.map((day) => [day.on, day]));
	return {
		id,
		name,
		required_m,
		expectedFrom,
		likelyFrom,
		until,
		dayRule: dayRuleOf(load),
		met_percent: days.map(({ on }) => percent(byDay.get(on)?.pThickness ?? null, Math.floor)),
		thaw_percent: days.map(({ on }) => percent(byDay.get(on)?.pThaw ?? null, Math.ceil))
	};
}

/** The rule of the day asked for that makes a load ask more than its days and chances go by. */
export function dayRuleOf({ rules }: Pick<ForecastLoad, 'rules'>): DayRule | null {
	return DAY_RULES.find((rule) => rules.some(({ code }) => code === rule)) ?? null;
}

/** A hair keeps 0.9 at 90 although its double may be a bit off. */
function percent(share: number | null, round: (value: number) => number): number | null {
	const hair = round === Math.floor ? 1e-6 : -1e-6;
	return share === null ? null : Math.abs(round(share * 100 + hair));
}
