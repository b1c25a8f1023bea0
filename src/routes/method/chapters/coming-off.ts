import { SHELTER_LEAD_d } from '#lib/model/leaving/off-by.ts';
import type { Chapter } from '../step.ts';
import { GUESS } from './words.ts';

export const COMING_OFF: Chapter = {
	id: 'coming-off',
	title: 'Coming off',
	steps: [
		{
			title: 'The latest day to have a load off',
			words: `The earliest of three: the local removal date as you typed it, the last day on which nine of ten winters still have what the load asks for, be it that the ice gets thin or that snow sinks what stands on it, and the day before a warm spell that is more likely than not to stay. The days it takes to get it free are yours to type; ${SHELTER_LEAD_d} stand in for what is frozen in. What is enough again after a fall is none to stay for. No day is named where the snow is not known.`,
			source: GUESS
		},
		{
			title: 'What has been lost',
			words:
				'Each of the winters that are run is followed from its own thickest day at its own spot; only what weather took counts, not what a reading corrected.',
			source: GUESS
		},
		{
			title: 'Do the nights freeze again?',
			words:
				'Six hours below freezing within a day count as a night that does, as six above weaken. It makes white ice of the water on top. It gives back nothing that was lost inside and ends no warm-spell rule.',
			source: GUESS
		},
		{
			title: 'Slush, and a flood ahead',
			words:
				'How deep the slush is, how much frost it takes under the snow of today, and the first day on which half, and nine in ten, of the spots have none. A flood is ahead on the first day of the next seven on which the forecast makes the slush a centimetre deeper than today, or brings more snow than the sheet still floats. Messages go by the same rule.',
			source: 'Freezing as above, derived [C]; seven days and a centimetre are our choice'
		},
		{
			title: 'Ice-out',
			words:
				'The first day without ice after its thickest one, in each of the winters that are run: the window has eight tenths of them. A week either way is usual at best, and wind can break rotten ice sooner.',
			source:
				'Counted among the members, our choice; 3 to 8 days by melting degree-days: Williams 1971 [R, abstract]'
		},
		{
			title: 'The landing closes first',
			words:
				'Ice goes first at shores and inlets, soonest where gravel, sand, salt, run-off or dark rocks take up the sun. The thickest ice is in the middle, and gets nobody off. None of this is in the dates.',
			source: 'Ashton, Ice in lakes and rivers [R]; sanded landings: common practice [M-hi]'
		}
	]
};
