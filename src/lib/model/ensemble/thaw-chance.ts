import type { IsoDate } from '../calendar.ts';
import type { IceColumn } from '../column.ts';
import { dayDegrees, meanAir_degC } from '../degree-days.ts';
import type { Reading } from '../reading.ts';
import { calm, isRefrozen, type WarmDay } from '../warm-day.ts';
import { nextWarmDay, warmSpells, type RecordedDay } from '../warm-spell.ts';
import type { SpellDay } from '../warmth.ts';
import type { WeatherDay } from '../weather.ts';
import type { ScenarioWeather } from './scenarios.ts';

export interface ThawChanceInput {
	/** The season's days as far as they are known; those that a scenario tells are left out. */
	days: readonly RecordedDay[];
	readings: readonly Reading[];
	/** True for a known day built from hourly records. */
	hasHours: (on: IsoDate) => boolean;
	scenarios: readonly ScenarioWeather[];
	/** What each scenario counts for, such as the members that use it; equal where not given. */
	weights?: ArrayLike<number>;
	latitude: number;
	/** Where the rules stand by what was observed after the last known day. */
	from?: WarmDay | null;
}

/** How likely a warm-spell rule is in force on a day. */
export interface ThawDay {
	on: IsoDate;
	pThaw: number;
}

/**
 * For each day the share of the scenarios in which a warm-spell rule, doubling or withholding, is in
 * force; 0 or 1 on known days, which go by their readings.
 *
 * No hole of a day to come can be foreseen, so there a spell is in force from its warm hours until 72
 * hours below freezing with 15 °C·d of frost: from then a hole could end it. One that only a sound core
 * ends, after a bad core or sun on bare ice, stays in force. Sun of days to come is not judged, and
 * all of them count as having a sheet of ice.
 */
export function thawChance(input: ThawChanceInput): ThawDay[] {
	const { readings, hasHours, scenarios } = input;
	const firstOn = scenarios[0]?.days[0]?.on ?? null;
	const days = firstOn === null ? input.days : input.days.filter(({ on }) => on < firstOn);
	const known = warmSpells(days, readings, hasHours);
	const past = known.map(({ on, state }) => ({ on, pThaw: state === 'none' ? 0 : 1 }));
	return [...past, ...ahead(input, input.from ?? known.at(-1) ?? calm(''), days.at(-1))];
}

function ahead(
	{ scenarios, weights, latitude, hasHours }: ThawChanceInput,
	today: WarmDay,
	lastDay: SpellDay | undefined
): ThawDay[] {
	const dates = scenarios[0]?.days.map(({ on }) => on) ?? [];
	const inForce = new Float64Array(dates.length);
	let all = 0;
	scenarios.forEach(({ days }, scenario) => {
		const weight = weights?.[scenario] ?? 1;
		all += weight;
		if (weight <= 0) return;
		const spells = spellsAhead(days, today, lastDay, latitude, hasHours);
		spells.forEach((state, index) => {
			if (isInForce(state)) inForce[index] = (inForce[index] ?? 0) + weight;
		});
	});
	return dates.map((on, index) => ({ on, pThaw: all > 0 ? (inForce[index] ?? 0) / all : 0 }));
}

function spellsAhead(
	days: readonly WeatherDay[],
	today: WarmDay,
	lastDay: SpellDay | undefined,
	latitude: number,
	hadHours: (on: IsoDate) => boolean
): WarmDay[] {
	const byHours = new Set(days.filter((day) => day.aboveFreezing_h !== null).map(({ on }) => on));
	const hasHours = (on: IsoDate): boolean => byHours.has(on) || hadHours(on);
	let state = today;
	let before = lastDay;
	return days.map((weather) => {
		const day = spellDay(weather, latitude);
		state = nextWarmDay(state, before, day, [], hasHours);
		before = day;
		return state;
	});
}

function isInForce(state: WarmDay): boolean {
	if (state.state === 'none') return false;
	return !isRefrozen(state) || state.hadSunOnBareIce || state.badCoreOn !== null;
}

/** A day to come has ice, and snow that keeps the sun off: neither is known, both let the air decide. */
const SHADED_SHEET: IceColumn = {
	snow_m: 0.1,
	snowDensity_kg_m3: 250,
	slush_m: 0,
	white_m: 0,
	clear_m: 0.3,
	liquidFraction: 0
};

function spellDay(weather: WeatherDay, latitude: number): SpellDay {
	const degrees = dayDegrees(weather, latitude);
	return {
		on: weather.on,
		air_degC: meanAir_degC(weather),
		freezing_degCd: degrees?.freezing_degCd ?? 0,
		aboveFreezing_h: (degrees ?? weather).aboveFreezing_h,
		sun_W_m2: 0,
		column: SHADED_SHEET
	};
}
