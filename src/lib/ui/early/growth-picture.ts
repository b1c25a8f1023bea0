import type { EarlyGrowth } from '#lib/model/early/growth.ts';
import type { TableRow } from '../components/ScrollTable.svelte';
import { day, shortDay } from '../format/day.ts';
import { temperature } from '../format/degrees.ts';
import { requirement, thickness } from '../format/length.ts';
import { UNKNOWN } from '../format/number.ts';
import type { Units } from '../units-setting.ts';
import type { BarDay } from './bars.ts';
import { inTenAtMost } from './chance-words.ts';
import { weekday } from './growth-words.ts';

/** Room over the highest bar, and the least that a picture shows. */
const HEADROOM = 1.12;
const LEAST_TOP_m = 0.16;

/** Bars of the days to come, what tops them, and what they show in one sentence. */
export function growthBars(
	{ days }: Pick<EarlyGrowth, 'days'>,
	units: Units
): { days: BarDay[]; top: number; sentence: string } {
	const bars = days.flatMap(({ on, source, total_m: { p50, p90 }, bound_m }): BarDay[] =>
		bound_m === null || p50 === null || p90 === null
			? []
			: [{ on, low: bound_m, high: p90, middle: p50, isForecast: source === 'forecast' }]
	);
	const [first, last] = [bars[0], bars.at(-1)];
	const sentence =
		first && last
			? `From ${thickness(first.middle, units)} on ${shortDay(first.on)} to ${thickness(last.middle, units)} on ${shortDay(last.on)}, lower bound then ${thickness(last.low, units)}.`
			: 'Nothing is estimated for the days to come.';
	const highest = Math.max(LEAST_TOP_m, ...bars.map(({ high }) => high));
	return { days: bars, top: HEADROOM * highest, sentence };
}

/** What charts ask of the first loads: a line for those that ask the same, and all of it in words. */
export function askedLines(
	{ loads }: Pick<EarlyGrowth, 'loads'>,
	units: Units
): { lines: { at: number; text: string }[]; sentence: string } {
	const names = new Map<number, string[]>();
	for (const { base_m, name } of loads) {
		if (base_m !== null) names.set(base_m, [...(names.get(base_m) ?? []), name.toLowerCase()]);
	}
	const asked = [...names].map(([at, who]) => ({ at, text: requirement(at, units), who }));
	const said = asked.map(({ text, who }) => `${text} for ${who.join(' and ')}`);
	return {
		lines: asked.map(({ at, text }) => ({ at, text })),
		sentence: said.length === 0 ? '' : `Dashed: what charts ask, ${said.join(', ')}.`
	};
}

export function dayRows({ days }: Pick<EarlyGrowth, 'days'>, units: Units): TableRow[] {
	return days.map(({ on, air_degC, total_m, bound_m, pThin }) => ({
		id: on,
		cells: [
			`${weekday(on)} ${day(on).slice(-4)}`,
			temperature(air_degC, units),
			thickness(bound_m, units),
			thickness(total_m.p50, units),
			pThin === null ? UNKNOWN : inTenAtMost(pThin)
		]
	}));
}
