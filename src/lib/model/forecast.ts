import type { IsoDate, WinterId } from './calendar.ts';
import type { DaySource } from './weather.ts';

/**
 * What one hole at a random spot of the site would show. `null` where it is not estimated;
 * all are `null` on a day past the known weather.
 */
export interface Quantiles {
	p05: number | null;
	p10: number | null;
	p50: number | null;
	p90: number | null;
	p95: number | null;
}

export interface ForecastDay {
	on: IsoDate;
	source: DaySource;
	air_degC: number | null;
	/** Since freeze-up, which is counted, to this day, which is not. */
	fdd_degCd: number | null;
	tdd_degCd: number | null;
	clear_m: Quantiles;
	white_m: Quantiles;
	snow_m: Quantiles;
	slush_m: Quantiles;
	/** Clear and white ice, without slush. */
	total_m: Quantiles;
	/** Clear ice and half of the white: what bearing is judged by. */
	effective_m: Quantiles;
}

export type LoadStatus = 'notYet' | 'expectedNotDrilled' | 'reached' | 'withheld' | 'askAnEngineer';

/** A published rule or factor that shaped a requirement or a status. */
export interface AppliedRule {
	code: string;
	/** In plain words, with its figures. */
	text: string;
	/** Author and year, or `common practice, no source`. */
	source: string;
}

export interface ForecastLoad {
	id: string;
	name: string;
	mass_kg: number;
	/** Effective thickness asked for on `asOf`, all factors in; `null` when only an engineer can say. */
	required_m: number | null;
	/** The same from the other published set, shown beside it. */
	requiredOther_m: number | null;
	/**
	 * Effective thickness that it is held against on `asOf`: the lower bound, for vehicles that of the
	 * thinnest of five spots; `null` where the day is not known.
	 */
	bound_m: number | null;
	rules: AppliedRule[];
	status: LoadStatus;
	/** Why the status is what it is, in words. */
	reason: string;
	expectedFrom: IsoDate | null;
	likelyFrom: IsoDate | null;
	until: IsoDate | null;
	days: { on: IsoDate; pThickness: number | null; pThaw: number | null }[];
}

export interface Caution {
	code: string;
	text: string;
}

/** The answer of `GET /api/v1/lakes/{lake}/forecast`. */
export interface Forecast {
	lake: string;
	site: string;
	winter: WinterId;
	asOf: IsoDate;
	days: ForecastDay[];
	loads: ForecastLoad[];
	cautions: Caution[];
}
