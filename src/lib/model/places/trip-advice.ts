/** A line of a trip sheet and where it comes from. */
export interface Advice {
	text: string;
	source: string;
}

const NO_SOURCE = 'common practice, no source';
const LIFESAVING = 'Lifesaving Society';

/** What goes along. New Hampshire Fish and Game and Lifesaving Society [R], Minnesota DNR 2022 [R]. */
export const CHECKLIST: readonly Advice[] = [
	{ text: 'Ice picks round the neck, outside the coat', source: LIFESAVING },
	{ text: 'Ice chisel with a line to the wrist, drill, tape', source: NO_SOURCE },
	{ text: 'Cleats', source: NO_SOURCE },
	{
		text: 'Flotation suit or life jacket; never worn inside a vehicle',
		source: 'Minnesota DNR 2022'
	},
	{ text: 'Throw rope, at hand', source: LIFESAVING },
	{ text: 'Whistle and a charged phone, dry', source: LIFESAVING },
	{ text: 'Satellite messenger where there is no phone signal', source: NO_SOURCE },
	{ text: 'Company, some metres apart; somebody on land knows', source: LIFESAVING },
	{ text: 'Nobody on the ice at night or in driving snow; no alcohol', source: LIFESAVING },
	{
		text: 'In a vehicle: belt off, windows open, doors unlocked, lights on',
		source: 'agencies, as reported'
	}
];

/**
 * What to do after the ice has broken. New Hampshire Fish and Game and Lifesaving Society [R]; the times
 * and what helpers do, several bodies [R2].
 */
export const BROKEN_THROUGH: readonly Advice[] = [
	{
		text: 'One minute to get the breath under control, ten of useful movement, about an hour before the cold takes the senses.',
		source: 'the 1-10-1 rule, as reported by several'
	},
	{
		text: 'Turn to where you came from. Arms and picks on the ice, kick until you lie flat, slide out, roll away. Do not stand up.',
		source: 'New Hampshire Fish and Game; Lifesaving Society'
	},
	{
		text: 'Cannot get out: keep the arms on the ice and still, so that they may freeze to it.',
		source: 'agencies, as reported'
	},
	{
		text: 'Helpers call first, then reach or throw something, lying down. Do not walk up to the hole.',
		source: 'agencies, as reported'
	}
];
