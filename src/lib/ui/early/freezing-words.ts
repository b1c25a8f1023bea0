import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { Cooling } from '#lib/model/early/cooling.ts';
import type { Freezing } from '#lib/model/early/early-ice.ts';
import { day, shortDay } from '../format/day.ts';
import { degreeDays, temperature, temperatureStep } from '../format/degrees.ts';
import { depthOfWater } from '../format/distance.ts';
import { counted } from '../format/number.ts';
import type { Units } from '../units-setting.ts';
import { inTenAtLeast } from './chance-words.ts';

const LOOK_AHEAD_d = [3, 7, 14];
/** From here it is more likely frozen over than not, recorded or not. */
const EVEN = 0.5;

type Chances = Pick<Freezing, 'chances'>;

/** The answer before freeze-up in one sentence. */
export function freezingHeadline(freezing: Chances | null, now: IsoDate): string {
	if (freezing === null) return 'No freeze-up is recorded yet.';
	const today = chanceOn(freezing, now);
	if (today !== null && today >= EVEN)
		return `It may have frozen over by now (${inTenAtLeast(today)}, roughly): look, and record the day.`;
	const week = addDays(now, 7);
	const soon = ifOpen(freezing, now, week);
	return soon === null
		? 'No freeze-up is recorded yet.'
		: `No freeze-up is recorded yet. Chance of a first skim by ${shortDay(week)}: roughly ${inTenAtLeast(soon)}.`;
}

/** Chances by some days ahead, if the lake is seen open now. */
export function skimRows(freezing: Chances, now: IsoDate): { on: IsoDate; text: string }[] {
	return LOOK_AHEAD_d.flatMap((ahead_d) => {
		const on = addDays(now, ahead_d);
		const chance = ifOpen(freezing, now, on);
		return chance === null ? [] : [{ on, text: inTenAtLeast(chance) }];
	});
}

/** Chance of a freeze-up by a day given open water on another. */
export function ifOpen(freezing: Chances, openOn: IsoDate, by: IsoDate): number | null {
	const open = chanceOn(freezing, openOn);
	const then = chanceOn(freezing, by);
	if (open === null || then === null) return null;
	return open >= 1 ? 1 : Math.max(0, (then - open) / (1 - open));
}

function chanceOn({ chances }: Chances, on: IsoDate): number | null {
	return chances.find((each) => each.on === on)?.pFrozen ?? null;
}

/** How cold it has been. */
export function coolingSentences(cooling: Cooling, units: Units): string[] {
	const { week_degC, weekBefore_degC, frost_degCd, frostDays, firstFrostOn, to } = cooling;
	const before =
		weekBefore_degC === null
			? ''
			: `, after ${temperature(weekBefore_degC, units)} the week before`;
	const first = firstFrostOn === null ? '' : `, the first on ${shortDay(firstFrostOn)}`;
	return [
		`The week to ${shortDay(to)} had ${temperature(week_degC, units)} in the mean${before}.`,
		`${counted(frostDays, 'day')} with a mean below freezing since 1 July${first}; ${degreeDays(frost_degCd, units)} of frost. Before the lake is covered that only cools the water: it counts for no ice.`
	];
}

/** How the chance is made, and how far this lake has shown that it holds. */
export function thresholdSentence(
	{ threshold, earlier }: Freezing,
	cooling: Cooling,
	units: Units
): string {
	const depth = `${depthOfWater(cooling.depth_m, units)} of mean depth`;
	const memory = cooling.isDepthAssumed
		? `The mean depth is not known and taken as ${depth}`
		: `Water of ${depth} follows the air slowly`;
	const own =
		earlier.length === 0
			? 'No earlier freeze-up with weather before it is stored here, so what five measured lakes showed stands in'
			: `At ${counted(earlier.length, 'earlier freeze-up')} here it stood at ${earlier.map(({ winter, smoothed_degC }) => `${temperature(smoothed_degC, units)} (${winter})`).join(', ')}`;
	return `${memory}: the air as it is felt by the water stands at ${temperature(cooling.smoothed_degC, units)}. ${own}; taken: ${temperature(threshold.mean_degC, units)}, give or take ${temperatureStep(threshold.sd_K, units)}.`;
}

/** Earlier freeze-ups as dates. */
export function earlierSentence({ earlier }: Pick<Freezing, 'earlier'>): string | null {
	if (earlier.length === 0) return null;
	const days = earlier.map(({ freezeUpOn }) => day(freezeUpOn)).join(', ');
	return `Earlier freeze-ups here: ${days}.`;
}
