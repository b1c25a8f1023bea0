import { addDays, type IsoDate } from '../calendar.ts';
import type { ForecastDay, ForecastLoad, LoadStatus, Quantiles } from '../forecast.ts';
import { chartMinimum, type LoadCase } from '../load-case.ts';
import { currentFactor, WARM_SPELL_FACTOR } from '../load-factors.ts';
import type { Outlook, OutlookInput } from '../outlook.ts';
import { parametersFor } from '../parameters.ts';
import { requirement, ORDINARY } from '../requirement.ts';
import { snowWarmth } from '../snow-warmth.ts';
import type { Steps } from '../steps.ts';
import { frostToGo_degCd, growthRate_m_d, type Sheet } from './growth-rate.ts';
import { nowOf } from './now-of.ts';
import { shareBelow } from './share-below.ts';
import { snowEffectSteps, type SnowEffect } from './snow-effect.ts';
import { testDay } from './test-day.ts';
import { comingWeekend } from './weekend.ts';
import { WIND_BREAKS_BELOW_m } from './wind.ts';

/** Days to come whose mean temperature rates of growth are told for. */
const RATE_d = 5;
/** Further snow that rates of growth are told for. */
const MORE_SNOW_m = [0, 0.05, 0.1];
/** As it falls and begins to settle: 150 to 200 kg/m³ near 0 °C [M-hi]. */
const NEW_SNOW_kg_m3 = 150;
/** Days that are told one by one. */
const TOLD_d = 16;

/** A load of the early season. */
export interface EarlyLoad {
	id: string;
	name: string;
	status: LoadStatus;
	/** With the day's own factors and without; `null` where only an engineer can say. */
	required_m: number | null;
	base_m: number | null;
	/** Frost until the estimate, and until the lower bound, has it under the snow of today. */
	frostToGo_degCd: { estimate: number; bound: number } | null;
	expectedFrom: IsoDate | null;
	likelyFrom: IsoDate | null;
	/** The coming weekend's days. */
	weekend: { on: IsoDate; pThickness: number | null; pThaw: number | null }[];
}

/** A day to come in short. */
export interface EarlyDay {
	on: IsoDate;
	source: ForecastDay['source'];
	air_degC: number | null;
	/** Whole ice at the day's start. */
	total_m: Quantiles;
	/** Lower bound of it to go by. */
	bound_m: number | null;
	/** Chance of less than wind easily breaks out. */
	pThin: number | null;
}

export interface EarlyTest {
	on: IsoDate | null;
	/** Whether but for warm spells there were a day. */
	isThawInTheWay: boolean;
	lowest_m: number;
	asked_m: number;
}

export interface EarlyGrowth {
	/** Ice on the day of asking. */
	total_m: Quantiles;
	bound_m: number | null;
	growth_m_d: number | null;
	snowKnown: boolean;
	/** Share of holes that would show less than wind easily breaks out. */
	pThin: number | null;
	/** Mean temperature of the days to come, and growth at it under today's snow and more; `null` in a thaw. */
	rates: { air_degC: number; rows: { moreSnow_m: number; growth_m_d: number }[] } | null;
	/** The last day of the forecast, and frost until its end; `null` without one. */
	forecast: { to: IsoDate; frost_degCd: number } | null;
	snow: SnowEffect | null;
	loads: EarlyLoad[];
	/** When a test is worth the trip, and what the lowest and the chosen charts ask on foot. */
	test: EarlyTest | null;
	days: EarlyDay[];
}

/** How a young sheet grows, and what it takes to the first loads. */
export function* growthSteps(
	input: OutlookInput,
	outlook: Outlook,
	firstLoads: readonly ForecastLoad[]
): Steps<EarlyGrowth> {
	const { asOf } = input;
	const now = nowOf(input);
	const { days } = outlook.forecast;
	const today = days.find(({ on }) => on === asOf);
	const sheet = sheetOf(input, outlook);
	const forecastTo = days.findLast(({ source }) => source === 'forecast')?.on ?? null;
	return {
		total_m: today?.total_m ?? UNKNOWN,
		bound_m: today?.bound?.total_m ?? null,
		growth_m_d: outlook.growth_m_d,
		snowKnown: outlook.snowKnown,
		pThin: today ? shareBelow(today.total_m, WIND_BREAKS_BELOW_m) : null,
		rates: ratesOf(sheet, meanAir(days, now)),
		forecast:
			forecastTo === null ? null : { to: forecastTo, frost_degCd: frost(days, asOf, forecastTo) },
		snow: forecastTo === null ? null : yield* snowEffectSteps(input, outlook.forecast, forecastTo),
		loads: firstLoads.map((load) => earlyLoad(load, input, sheet)),
		test: outlook.snowKnown ? testOf(input, days, firstLoads) : null,
		days: days.filter(({ on }) => on >= now && on <= addDays(now, TOLD_d)).map(earlyDay)
	};
}

const UNKNOWN: Quantiles = { p05: null, p10: null, p50: null, p90: null, p95: null };

/** The sheet of the estimate, with the lake's own parameters. */
function sheetOf({ lake }: OutlookInput, { today }: Outlook): Sheet {
	const { exchange_W_m2K, snowConductivityRatio, waterHeat_W_m2 } = parametersFor(lake);
	const column = today?.column;
	return {
		clear_m: column?.clear_m ?? 0,
		white_m: column?.white_m ?? 0,
		snow_m: column?.snow_m ?? 0,
		snowDensity_kg_m3: column?.snowDensity_kg_m3 || NEW_SNOW_kg_m3,
		exchange_W_m2K,
		snowConductivityRatio,
		waterHeat_W_m2
	};
}

function ratesOf(sheet: Sheet, air_degC: number | null): EarlyGrowth['rates'] {
	if (air_degC === null || air_degC >= 0) return null;
	const snowConductivityRatio = sheet.snowConductivityRatio * snowWarmth(air_degC);
	const rows = MORE_SNOW_m.map((moreSnow_m) => ({
		moreSnow_m,
		growth_m_d: growthRate_m_d(
			{ ...withMoreSnow(sheet, moreSnow_m), snowConductivityRatio },
			air_degC
		)
	}));
	return { air_degC, rows };
}

function withMoreSnow(sheet: Sheet, more_m: number): Sheet {
	const snow_m = sheet.snow_m + more_m;
	if (snow_m === 0) return sheet;
	const mass_kg_m2 = sheet.snow_m * sheet.snowDensity_kg_m3 + more_m * NEW_SNOW_kg_m3;
	return { ...sheet, snow_m, snowDensity_kg_m3: mass_kg_m2 / snow_m };
}

function meanAir(days: readonly ForecastDay[], from: IsoDate): number | null {
	const air = days
		.filter(({ on }) => on >= from && on < addDays(from, RATE_d))
		.flatMap(({ air_degC }) => (air_degC === null ? [] : [air_degC]));
	return air.length === 0 ? null : air.reduce((sum, each) => sum + each, 0) / air.length;
}

/** Frost of the days from one to another, both counted. */
function frost(days: readonly ForecastDay[], from: IsoDate, to: IsoDate): number {
	const at = (on: IsoDate) => days.find((day) => day.on === on)?.fdd_degCd ?? null;
	const start = at(from);
	const end = at(addDays(to, 1)) ?? at(to);
	return start === null || end === null ? 0 : Math.max(0, end - start);
}

function earlyLoad(answer: ForecastLoad, input: OutlookInput, sheet: Sheet): EarlyLoad {
	const { bound_m } = answer;
	const load = input.loads.find(({ id }) => id === answer.id);
	const base_m = load ? baseOf(load, input, input.chartSet) : null;
	const weekend = comingWeekend(nowOf(input));
	return {
		id: answer.id,
		name: answer.name,
		status: answer.status,
		required_m: answer.required_m,
		base_m,
		frostToGo_degCd:
			base_m === null || bound_m === null
				? null
				: {
						estimate: frostToGo_degCd(sheet, base_m),
						bound: frostToGo_degCd(thinner(sheet, bound_m), base_m)
					},
		expectedFrom: answer.expectedFrom,
		likelyFrom: answer.likelyFrom,
		weekend: answer.days.filter(({ on }) => weekend.includes(on))
	};
}

/** The same sheet with no more than an effective thickness. */
function thinner(sheet: Sheet, effective_m: number): Sheet {
	const clear_m = Math.max(0, effective_m - sheet.white_m / 2);
	return { ...sheet, clear_m: Math.min(sheet.clear_m, clear_m) };
}

function baseOf(load: LoadCase, { lake, minimums }: OutlookInput, set: 'strict' | 'common') {
	return requirement(load, minimums, set, { ...ORDINARY, isRiver: lake.water === 'river' }).base_m;
}

/**
 * By the lowest row that any set has for one person on foot, with what moving water adds. What the chosen
 * charts ask is that of today, doubled in a warm spell.
 */
function testOf(
	input: OutlookInput,
	days: readonly ForecastDay[],
	firstLoads: readonly ForecastLoad[]
): EarlyGrowth['test'] {
	const { minimums, chartSet, lake } = input;
	const factor = currentFactor(lake.water === 'river');
	const asked = (set: 'strict' | 'common') => {
		const { thickness_m } = chartMinimum(minimums, set, 'onFoot');
		return thickness_m === null ? null : thickness_m * factor;
	};
	const sets = [asked('strict'), asked('common')].filter((each) => each !== null);
	const [thaw] = firstLoads;
	const chosen_m = asked(chartSet);
	if (sets.length === 0 || chosen_m === null || thaw === undefined) return null;
	const isWarm = thaw.rules.some(({ code }) => code === 'warmSpell');
	const asked_m = chosen_m * (isWarm ? WARM_SPELL_FACTOR : 1);
	const lowest_m = Math.min(...sets);
	const on = testDay(days, nowOf(input), lowest_m, thaw);
	const isThawInTheWay =
		on === null && testDay(days, nowOf(input), lowest_m, { days: [] }) !== null;
	return { on, isThawInTheWay, lowest_m, asked_m };
}

function earlyDay({ on, source, air_degC, total_m, bound }: ForecastDay): EarlyDay {
	const pThin = shareBelow(total_m, WIND_BREAKS_BELOW_m);
	return { on, source, air_degC, total_m, bound_m: bound?.total_m ?? null, pThin };
}
