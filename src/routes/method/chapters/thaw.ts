import { ROTTING_SUN_W_m2, SHADING_SNOW_m } from '#lib/model/warm-spell.ts';
import { COLD_SNAP_FALL_K, THIN_SNOW_m } from '#lib/model/cold-snap.ts';
import { DOUBLING_h, WITHHOLDING_h } from '#lib/model/warmth.ts';
import { ROTTEN } from '#lib/model/rotten.ts';
import type { Chapter } from '../step.ts';

export const THAW: Chapter = {
	id: 'thaw',
	title: 'Thaw and strength',
	steps: [
		{
			title: 'Thaw takes strength first, then thickness',
			words:
				'Thaw and sun melt the snow, then slush, white and clear ice, from the top and, once the sun warms the water, from below. Sun on bare or thinly covered ice also melts it from inside, even in frost: the ice keeps its thickness and loses its strength. Half of the strength is gone when about a twentieth of the ice has turned to water.',
			equations: [
				'melt = m · TDD + sun that is taken up / (ρ_{ice} L)',
				'strength left = (1 − √(n/0.6))^{2}'
			],
			where: [
				['m', '0.3 to 1 cm for each °C·d'],
				['n', 'share of the ice that is water']
			],
			source:
				'Ashton, Ice in lakes and rivers [R]; Bulatov 1970 [M-med]; melt by degree-days: Bilello 1980 [R, abstract], its size [M-med]'
		},
		{
			title: 'Warm spells come before everything',
			words: `${DOUBLING_h} hours above freezing within a day double what is asked for. ${WITHHOLDING_h} hours, or where there are no hours a daily mean above freezing, withhold every load. Hours of a day and of the one before are added, as they may be one run. That ends after three days of frost with at least 15 °C·d and a new hole on the open part; once sun has been on bare ice, only after a core that was found sound. A wet or candled core withholds every load in any weather.`,
			source: 'Minnesota DNR 2013 [R2]; TM 5-852-1 [R]; the way back is our choice'
		},
		{
			title: 'The state of strength, in words',
			words: `The gravest that holds is said, with the rule behind it: no ice left; rotten (a bad core, or ${100 * ROTTEN} % of it water); closed and weakened (the two warm-spell rules); sunlit (a clear sky’s mean of more than ${ROTTING_SUN_W_m2} W/m² and less than ${100 * SHADING_SNOW_m} cm of snow); mild (some hours above freezing); in frost. Only warmth takes away; cold earns nothing.`,
			source: `The rules as named there; rotten from ${100 * ROTTEN} % and the limits of sun and snow are our choice`
		},
		{
			title: 'Sudden cold',
			words: `A fall of more than ${COLD_SNAP_FALL_K} °C within a day on ice with less than ${100 * THIN_SNOW_m} cm of snow opens cracks: the load that ice takes is halved on that day and the next.`,
			source:
				'Named as a cause of failures by Gold 1971 [R, abstract]; its size [M-med]; the snow is our choice'
		}
	]
};
