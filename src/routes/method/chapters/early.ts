import { WIND_BREAKS_BELOW_m, WINDY_m_s } from '#lib/model/early/wind.ts';
import { BROKE_LATELY_d } from '#lib/model/broke-lately.ts';
import type { Chapter } from '../step.ts';
import { GUESS } from './words.ts';

export const EARLY: Chapter = {
	id: 'early',
	title: 'Early ice',
	steps: [
		{
			title: 'Water follows the air slowly',
			words:
				'Before freeze-up the air is smoothed as a lake’s water would follow it: a deep lake by weeks, a shallow one by days. It is an index of the cooling, not a temperature of the water: sun, evaporation and layers in the water are left out.',
			equations: ['S = S_{before} + (T − S_{before}) (1 − e^{−1 day/τ})', 'τ = ρ_{water} c D / H'],
			where: [
				['S', 'smoothed air, °C'],
				['τ', 'lag, some 2.4 days for each metre of depth'],
				['D', 'mean depth; 5 m where nobody typed it'],
				['H', '20 W/m² K']
			],
			source:
				'That dates follow smoothed air: Bilello 1964 [R, abstract]; the lag from the depth is derived [C]; 5 m is our choice'
		},
		{
			title: 'The chance that it has frozen over',
			words:
				'A lake freezes over about when the smoothed air is at 0 °C, 1.6 °C more or less from lake to lake and 1.2 °C from winter to winter. Its own earlier freeze-ups pull that towards themselves. The chance of a day is the share of possible weathers and thresholds for which the smoothed air has been that low by then. It never falls from day to day. It knows nothing of wind, which keeps water open for days, nor of bays, which freeze days to weeks before the middle; a week early or late is ordinary.',
			equations: [
				'threshold = (1 − w) · 0 °C + w · mean of the lake’s own',
				'w = σ_{lakes}^{2} / (σ_{lakes}^{2} + σ_{winters}^{2}/n)'
			],
			where: [['n', 'earlier freeze-ups of the lake that are known to six days']],
			source:
				'From 106 freeze-ups of five lakes in northern Wisconsin and eastern Finland [C]: rough for a lake unlike them'
		},
		{
			title: 'Wind breaks thin ice out',
			words: `Wind breaks early sheets up fast. Days with a mean wind of ${WINDY_m_s} m/s or more are named, with the chance that a hole shows less than ${100 * WIND_BREAKS_BELOW_m} cm then. A gust counts for more than the mean, and a wide lake is at more risk than a sheltered one. Ice that went starts anew, and its day has to be typed.`,
			source: `That it does: Swedish Meteorological and Hydrological Institute [R]; ${WINDY_m_s} m/s and ${100 * WIND_BREAKS_BELOW_m} cm are our choice`
		},
		{
			title: 'Frost still to come',
			words:
				'What it takes from the ice of today to the next chart minimum, under the snow of today: more snow makes it more. It is held against the frost that the forecast brings.',
			equations: ['FDD = ((h + k R)^{2} − (h_{now} + k R)^{2}) / α^{2}'],
			where: [
				['R', 'snow, white ice and film of air, m² K/W'],
				['α^{2}', '2 k · 86 400 s / (ρ_{ice} L)']
			],
			source: 'Ashton 1989, solved for the frost [M-hi]'
		},
		{
			title: 'When a test is worth the trip',
			words:
				'The first day on which a hole at a random spot is as likely as not to show what the lowest published chart asks of one person on foot, with no warm spell more likely than not. A test begins at the shore and ends where a hole shows too little.',
			source: GUESS
		},
		{
			title: 'Where the ice broke',
			words: `That somebody or something broke through is said before any estimate for ${BROKE_LATELY_d} days, by its place. It does not make the estimate of the rest thinner: it says that the place is not like the rest.`,
			source: GUESS
		}
	]
};
