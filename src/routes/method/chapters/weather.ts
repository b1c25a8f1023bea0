import { SPIKE_K } from '#lib/model/spiked-air.ts';
import { STUCK_h } from '#lib/model/stuck-air.ts';
import { GUESS } from './words.ts';
import type { Chapter } from '../step.ts';

export const WEATHER: Chapter = {
	id: 'weather',
	title: 'Frost, thaw and snow',
	steps: [
		{
			title: 'Frost and thaw are added up',
			words:
				'From the day of freeze-up on, each day below 0 °C adds its degrees to the frost, each day above to the thaw. Hourly records are used as they are; a daily record is split by the sine between its lowest and highest temperature. Frost before freeze-up cools the water and counts for no ice. A day without a temperature adds nothing and widens the doubt.',
			equations: ['FDD = Σ max(0, −T)', 'TDD = Σ max(0, T)'],
			where: [['T', 'air temperature, °C']],
			source: 'Common US practice [R2]; the sine: Baskerville and Emin 1969 [M-hi]'
		},
		{
			title: 'Frost that no weather makes is left out',
			words: `Hours or a day that are colder by more than ${SPIKE_K} °C than what lies on both sides of them, a station that tells the very same for ${STUCK_h} hours or for five days, and frost that stands still in a forecast for two days of hours or for five days are taken as unknown, and told. Warmth that comes so is told and counts, for caution. The hours of a day make a day once it is over; until then only its warm hours count.`,
			source:
				'Guidance flags steps and pauses: US EPA 2000 [R2]; the fastest change on record: Monthly Weather Review 1943 [M-hi]; how far it goes is our choice'
		},
		{
			title: 'Freeze-up',
			words:
				'The day is typed, not guessed: the first day of a cover that lasted. Where only two days are known, open on one and frozen on the other, every day between them is as likely, and each of the winters that are run side by side takes its own. Where ice was drilled by some day, all of them are frozen over by then. A lake that opened again starts anew: its old ice counts for nothing.',
			source: GUESS
		},
		{
			title: 'Snow lies on it',
			words:
				'What falls in the cold falls as snow. The wind takes a part of it off the lake, the rest settles, and it keeps the cold out by its density: ten centimetres can cut growth to a ninth. Snow on a lake is denser and conducts about twice what snow on land does. Where nobody reported what fell, the usual snow of the place and date stands in. It is never taken as none.',
			equations: ['k_{snow} = (0.138 − 1.01 ρ + 3.233 ρ^{2}) · f'],
			where: [
				['k_{snow}', 'conductivity, W/m K'],
				['ρ', 'density, g/cm³'],
				['f', 'a lake’s snow against land snow, fitted on measured winters, 1 to 2.5']
			],
			source:
				'Sturm and others 1997 [T]; Sturm and Liston 2003 [R, abstract]; settling: Verseghy 1991 [M-med]; the share that stays: [M-lo]'
		}
	]
};
