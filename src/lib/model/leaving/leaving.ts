import type { IsoDate } from '../calendar.ts';
import { total_m } from '../column.ts';
import type { Asked } from '../asked.ts';
import type { Forecast, ForecastDay, ForecastLoad } from '../forecast.ts';
import { isSnowKnown } from '../site-day.ts';
import { parametersFor } from '../parameters.ts';
import type { SiteEstimateInput } from '../site-estimate.ts';
import { ROTTING_SUN_W_m2, SHADING_SNOW_m } from '../warm-spell.ts';
import { lastDays, lastSpellFrom, type LastDays } from './last-days.ts';
import { leavingTexts, type LeavingTexts } from './leaving-texts.ts';
import { nightsAround, type Night } from './nights.ts';
import { slushOutlook, type SlushOutlook } from './slush-outlook.ts';
import { strengthOf, type Strength } from './strength.ts';
import { thinnerSince, type ThinnerSince } from './thinner-since.ts';

/** What late winter does to a site's ice, and until when it meets what loads ask for. */
export interface Leaving {
	/** Hours above freezing in the last 24 observed, or on the day of asking; `null`: not known. */
	warmLast_h: number | null;
	/** The day since which it has been losing; the day of asking while it has not. */
	peakOn: IsoDate;
	/** Thaw since then, the day of asking counted. */
	thawSincePeak_degCd: number;
	/** Whole thickness lost since then at one spot. */
	lost: { p10_m: number; p50_m: number; p90_m: number };
	/** Seen since the day of asking, which the loss knows nothing of; `null` without any. */
	thinnerSince: ThinnerSince | null;
	/** Sun strong enough, and no snow to keep it off. */
	isSunOnBareIce: boolean;
	strength: Strength;
	nights: Night[];
	/** From when a warm spell is in force for the rest of what is told; `null`: not told. */
	spellFrom: IsoDate | null;
	/** The last day that is told. */
	toldTo: IsoDate;
	/** With why the days end. */
	loads: ({ id: string; isEndedBySnow: boolean } & LastDays)[];
	slush: SlushOutlook | null;
	texts: LeavingTexts;
}

export interface LeavingInput {
	asked: Asked;
	input: SiteEstimateInput;
	days: readonly ForecastDay[];
	loads: readonly ForecastLoad[];
	iceOut: Forecast['iceOut'];
}

/** `null` where nothing is known of the day of asking, or the ice is gone. */
export function leavingOf({ asked, input, days, loads, iceOut }: LeavingInput): Leaving | null {
	const { site, today, warm, since, words, estimate } = asked;
	const { asOf, lake } = input;
	if (today === null || estimate.loss === null) return null;
	if (site.iceOutOn !== null || (since?.iceOutOn ?? null) !== null) return null;
	const { day } = today;
	const { peakOn, ...lost } = estimate.loss;
	const warmLast_h = since?.warmLast_h ?? day.aboveFreezing_h;
	const { column, sun_W_m2 } = day;
	const atPeak = site.days.find(({ on }) => on === peakOn) ?? day;
	const chances = loads[0]?.days ?? [];
	const isKnown = isSnowKnown(estimate.known, asOf);
	const facts = {
		warmLast_h,
		peakOn,
		thawSincePeak_degCd: day.tdd_degCd + day.thawing_degCd - atPeak.tdd_degCd,
		lost,
		thinnerSince: thinnerSince(since, days.find(({ on }) => on === asOf)?.total_m.p50 ?? null),
		isSunOnBareIce:
			total_m(column) > 0 && sun_W_m2 > ROTTING_SUN_W_m2 && column.snow_m < SHADING_SNOW_m,
		strength: strengthOf({ warm, column, sun_W_m2, warmLast_h, words }),
		nights: nightsAround(site.weather, asOf, lake.latitude),
		spellFrom: lastSpellFrom(chances, asOf),
		toldTo: days.findLast(({ total_m }) => total_m.p50 !== null)?.on ?? asOf,
		loads: loads.map(({ id, days: chances, isEndedBySnow }) => ({
			id,
			isEndedBySnow,
			...lastDays(chances, asOf, isKnown)
		})),
		slush: slushOutlook(
			days,
			asOf,
			column,
			asked.floodsWith_m,
			input.parameters ?? parametersFor(lake)
		)
	};
	return { ...facts, texts: leavingTexts(facts, { asOf, iceOut, words }) };
}
