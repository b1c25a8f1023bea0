import type { AppliedRule } from '../forecast.ts';
import { PARKED_APART_m } from '../moving/spacing.ts';
import type { Words } from '../words.ts';

/** After this long a parked vehicle is moved. [MinnesotaDNR2022] [R2] */
export const MOVE_AFTER_h = 2;

const DNR = 'Minnesota Department of Natural Resources, as reported';

/** That the ice under what stands on it stays above the water. */
export function floatingRule(thickness_m: number, parked_h: number, words: Words): AppliedRule {
	return {
		code: 'afloat',
		text: `Standing ${hours(parked_h)}: ${words.requirement(thickness_m)} keep the top of the ice above the water, with the snow that lies on it and the sag that grows with time.`,
		source:
			'floating plate with creep, our choice of its speed; after Frederking and Gold 1976, from memory'
	};
}

/** What holds for anything that is parked, whatever the thickness. */
export function parkedRules(words: Words): AppliedRule[] {
	return [
		{
			code: 'sinking',
			text: 'Water that wells up from a hole or a crack beside what is parked means that it is sinking: move it at once.',
			source: DNR
		},
		{
			code: 'moveOften',
			text: `Move vehicles every ${MOVE_AFTER_h} hours.`,
			source: DNR
		},
		{
			code: 'parkApart',
			text: `Park at least ${words.distance(PARKED_APART_m)} apart, and further where the spacing of a load asks it.`,
			source: DNR
		}
	];
}

function hours(parked_h: number): string {
	return parked_h === 1 ? 'an hour' : `${Number(parked_h.toPrecision(3))} hours`;
}
