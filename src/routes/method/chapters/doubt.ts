import type { Chapter } from '../step.ts';
import { GUESS } from './words.ts';

export const DOUBT: Chapter = {
	id: 'doubt',
	title: 'Doubt and readings',
	steps: [
		{
			title: 'Many winters side by side',
			words:
				'Several hundred winters of the site are run, each with its own air film, snow, heat of the water, melt and day of freeze-up within what is known of such lakes, and each freezing and thawing a little faster or slower for some days at a time. The band and every chance shown are counted among them, never made from a formula of the middle one.',
			equations: ['pace = e^{s g − s²/4}'],
			where: [
				['g', 'a chance number that keeps e^{−1/5} of itself from day to day'],
				['s', '0.45 in frost, 0.5 in thaw']
			],
			source:
				'Ranges of each from the sources above; how wide together: so that bands held nine tenths of the readings of measured winters, not a published figure [C]'
		},
		{
			title: 'One hole at a random spot',
			words:
				'Each of those winters is drilled at a spot of its own, as ice differs from place to place: by a third of itself while it is thin, by a few centimetres once it is thick. The lower bound is what one hole in ten falls short of; for vehicles, which cross many spots, the thinnest of five is taken.',
			equations: ['σ_{place} = 3.5 cm · h/(h + 10 cm)', 'σ_{hole} = 3 cm · h/(h + 10 cm)'],
			source: 'From measured winters [C]; 5 to 50 % of the thickness in handbooks [M-lo]'
		},
		{
			title: 'A drilled hole moves it',
			words:
				'A reading pulls the estimate towards what was measured, as far as the doubt of each allows: more holes pull more. Thinner and thicker pull alike, but one that is far too thick pulls little and is pointed out, and one that is far too thin is believed. “Did not go through” can only raise it; “went through” is a fact about its place and doesn’t move the rest. What somebody else told pulls less. A wet or candled core puts water into the ice, which then grows slower and melts sooner.',
			equations: [
				'x_{after} = x + cov(x, y) / (var y + σ^{2}) · (reading − y)',
				'σ^{2} = σ_{place}^{2} + (σ_{hole}^{2} + (1 cm)^{2}) / holes'
			],
			where: [
				['x', 'anything of a winter that is to be moved: its layers, its traits'],
				['y', 'what it would have shown in the hole']
			],
			source:
				'Ensemble Kalman filter: Evensen 2009 [M-hi]; how far to believe an odd one is our choice'
		},
		{
			title: 'Thick readings count slowly, thin ones at once',
			words:
				'A thicker reading raises the lower bound only in part, one hole alone does not raise it, and what somebody else told does not. A thinner one lowers it at once and in full.',
			equations: ['shown of a rise = 1 − 1/holes, until another reading stands beside it'],
			source: GUESS
		},
		{
			title: 'What past winters taught',
			words:
				'Readings of a lake’s earlier winters say whether it grows faster or slower than others of its size. The next winter starts from that, with some of the doubt put back, so that one odd winter does not rule it.',
			equations: ['m = C_{zy} (C_{yy} + R)^{−1} (readings − expected)'],
			where: [['m', 'where the traits of the site lie, in units of their own spread']],
			source: 'Ensemble smoother: Evensen 2009 [M-hi]'
		},
		{
			title: 'Days to come',
			words:
				'A forecast is taken with its error, which grows from day to day, for ten days at most; after that past winters of the place go on from where it ends, or the usual climate where fewer than three are stored. Snow that was forecast may be more or less, but no day that was forecast dry gets any.',
			equations: ['σ(L) = min(6, 1.25 (1.5 + 0.35 (L − 1))) °C'],
			where: [['L', 'days ahead; each keeps 0.7 of the error of the day before']],
			source:
				'That errors grow and level off: ECMWF forecast user guide [R]; the line [M-med], derived'
		},
		{
			title: 'Expected and likely',
			words:
				'A load is expected from the first of three days in a row on which half of the winters have what it asks for, and likely from the same with nine tenths. Its last day is the last one before three days in a row fall short; where it falls short already, the days of the next stretch are told. A warm spell does not erase the days; it is told apart, as its own chance.',
			source: GUESS
		},
		{
			title: 'When a chart minimum counts as reached',
			words:
				'Only when holes that you have seen say so: three or more on foot, five or more along the way for vehicles, and the bound carried forward from them still clears what is asked. That lasts seven days at most, or twenty-one where it clears it one and a half times and nothing has flooded or thawed. A thinner hole since, a warm spell since, or a day without a temperature ends it. At a landing or a crack it lasts one day, at a ridge it never holds. Otherwise it is “expected, not drilled”.',
			source: GUESS
		}
	]
};
