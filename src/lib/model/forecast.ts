import type { IsoDate, WinterId } from './calendar.ts';
import type { Afloat } from './parked/afloat.ts';
import type { Leaving } from './leaving/leaving.ts';
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
	/**
	 * Lower bound to go by: no higher than the 10 % quantile, what thick readings raised held back, what
	 * gaps may have cost taken off. `null` where nothing is estimated.
	 */
	bound: { total_m: number; effective_m: number } | null;
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

/** What each set of rules asks for by itself, with every factor of the way and the day in. */
export interface AskedParts {
	/** The published minimum of each set; `null`: an engineer. */
	strict_m: number | null;
	common_m: number | null;
	/** By Gold's formula. */
	gold_m: number;
	/** So that the ice under it stays above the water; `null` for what keeps moving. */
	afloat_m: number | null;
	/** Which of them is the largest, the chart being that of the lake's set. */
	decides: 'chart' | 'gold' | 'afloat';
}

export interface ForecastLoad {
	id: string;
	name: string;
	/** Of one, without its trailer. */
	mass_kg: number;
	/** All that bears on the ice at one place: its trailer and those near by as well. */
	counted_kg: number;
	/** From this distance on the next load counts on its own; nearer ones are added. */
	spacing_m: number;
	/** Effective thickness asked for on `asOf`, all factors in; `null` when only an engineer can say. */
	required_m: number | null;
	/** The same from the other published set, shown beside it. */
	requiredOther_m: number | null;
	/** What asks for it; `null` when only an engineer can say. */
	parts: AskedParts | null;
	/** How the ice would float under it on `asOf`, at the lower bound; `null` where there is none. */
	afloat: Afloat | null;
	/**
	 * Effective thickness that it is held against on `asOf`: the lower bound, for vehicles that of the
	 * thinnest of five spots, raised by readings only gradually; `null` where the day is not known.
	 */
	bound_m: number | null;
	rules: AppliedRule[];
	status: LoadStatus;
	/** Why the status is what it is, in words. */
	reason: string;
	/**
	 * First day of three in a row on which the thickness is there with a probability of 0.5 or more, in the
	 * stretch that is not over on the day of asking, else in the last that was.
	 */
	expectedFrom: IsoDate | null;
	/** The same with 0.9. */
	likelyFrom: IsoDate | null;
	/** Last day of that stretch, before three in a row under 0.5; `null` where none is told. */
	until: IsoDate | null;
	/**
	 * What ends its days is snow that sinks it, not thin ice: with none on the ice it would be met for
	 * longer. `false` for what keeps moving.
	 */
	isEndedBySnow: boolean;
	/**
	 * `pThickness`: the chart minimum with all but the day's own factors is met. `pThaw`: a warm-spell
	 * rule is in force.
	 */
	days: { on: IsoDate; pThickness: number | null; pThaw: number | null }[];
}

export interface Caution {
	code: string;
	text: string;
}

/** Days by which it has opened in one case of ten, a half and nine of ten; `null`: later than is told. */
export interface IceOutDates {
	p10: IsoDate | null;
	p50: IsoDate | null;
	p90: IsoDate | null;
}

/** The answer of `GET /api/v1/lakes/{lake}/forecast`. */
export interface Forecast {
	lake: string;
	site: string;
	winter: WinterId;
	asOf: IsoDate;
	days: ForecastDay[];
	loads: ForecastLoad[];
	/** When the ice goes; `null` while none of it goes in the days told. */
	iceOut: IceOutDates | null;
	/** What late winter has done and will do; `null` where the day is not known or the ice is gone. */
	leaving: Leaving | null;
	/** What past winters taught of the site, in words. */
	memoryText: string | null;
	cautions: Caution[];
}
