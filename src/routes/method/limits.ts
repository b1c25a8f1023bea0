/** What the number can't know. Said before what it can. */
export const LIMITS: readonly string[] = [
	'It is an estimate from weather, not a look at the ice. A drilled hole decides, on the day and on the way.',
	'It is for the open part of a site. Over a current, at an inlet, in narrows, over a spring, along a ridge, in bog or reeds, at a dock, rock, landing or snowdrift the ice can be a fraction of it. A current of half a metre a second at 0.1 °C holds the ice over two metres of water to about 16 cm at −10 °C, whatever the degree-days say (Ashton 1986, computed).',
	'Ice differs from spot to spot: two feet and one inch have been found a few yards apart (Minnesota DNR). Young ice differs most.',
	'It is as good as its weather. A station one degree off for a month moves 31 cm by about 2 cm; a freeze-up day that is one day off moves thin ice by about 1 cm.',
	'Without a record of snowfall the snow is a guess, and so is the thickness: then no load counts as expected or reached.',
	'In a thaw, strength goes before thickness. A thick sheet in April can carry less than a thin one in December.',
	'Drawdown, changing water levels and air under the ice are not in it. A reservoir or a river below a dam needs its own check.',
	'Charts are for new, clear, hard ice that floats. They don’t cover crowds, commercial use, or shelters parked with vehicles: those are for a qualified ice engineer and the local rules.'
];

/** How far a figure is confirmed. */
export const TAGS: readonly { tag: string; meaning: string }[] = [
	{ tag: 'R', meaning: 'read in the source itself, its text or its abstract' },
	{ tag: 'R2', meaning: 'read in a second page that reports the source' },
	{ tag: 'T', meaning: 'from memory, and the same in an independent copy of the published table' },
	{ tag: 'C', meaning: 'computed from the inputs stated' },
	{ tag: 'M-hi, M-med, M-lo', meaning: 'from memory only, with high, medium or low confidence' }
];
