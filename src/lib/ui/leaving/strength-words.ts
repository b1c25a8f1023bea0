import type { Leaving } from '#lib/model/leaving/leaving.ts';
import type { StrengthState } from '#lib/model/leaving/strength.ts';
import { shortDay } from '../format/day.ts';
import { degreeDays } from '../format/degrees.ts';
import { depth, thickness } from '../format/length.ts';
import type { Units } from '../units-setting.ts';

/** The state of the ice's strength in a few words. */
export const STRENGTH_WORDS: Record<StrengthState, string> = {
	open: 'No ice left, by the estimate',
	inFrost: 'In frost',
	mild: 'Mild hours',
	sunlit: 'Sun in bare ice',
	weakened: 'Weakened by warm hours',
	closed: 'Closed by the thaw',
	rotten: 'Rotten'
};

export interface Fact {
	name: string;
	value: string;
	note: string | null;
}

/** The numbers of the thaw, each with its doubt or what it is counted from. */
export function thawFacts(leaving: Omit<Leaving, 'loads'>, asOf: string, units: Units): Fact[] {
	const { warmLast_h, peakOn, thawSincePeak_degCd, lost, isSunOnBareIce, strength, thinnerSince } =
		leaving;
	const hasPeaked = peakOn < asOf;
	const toDay = `by the weather to ${shortDay(asOf)}`;
	return [
		{
			name: 'Above freezing in the last 24 hours',
			value: warmLast_h === null ? 'not known' : `${Math.ceil(warmLast_h)} h`,
			note: null
		},
		{
			name: 'Thaw since the ice was thickest',
			value: hasPeaked ? degreeDays(thawSincePeak_degCd, units) : 'none',
			note: hasPeaked ? `since ${shortDay(peakOn)}` : thinnerSince ? toDay : 'it is thickest now'
		},
		{
			name: 'Ice lost since then',
			value: lost.p90_m < 0.01 ? 'none' : depth(lost.p50_m, units),
			note:
				lost.p90_m < 0.01
					? thinnerSince
						? toDay
						: null
					: `eight spots of ten ${depth(lost.p10_m, units)} to ${depth(lost.p90_m, units)}`
		},
		...(thinnerSince === null
			? []
			: [
					{
						name: 'Seen since, thinner than the estimate',
						value: thinnerSince.total_m <= 0 ? 'open' : thickness(thinnerSince.total_m, units),
						note: `on ${shortDay(thinnerSince.on)}`
					}
				]),
		{ name: 'Sun on bare ice', value: isSunOnBareIce ? 'yes' : 'no', note: null },
		...(strength.state === 'open'
			? []
			: [
					{
						name: 'Strength left by the water inside',
						value: strengthText(strength.leftFraction),
						note: 'of sound ice, estimated'
					}
				])
	];
}

/** The law is steepest where hardly any water is inside: there a number would say too much. */
const MOST = 0.75;

function strengthText(leftFraction: number): string {
	return leftFraction >= MOST ? 'most of it' : `${Math.floor(leftFraction * 20) * 5} %`;
}
