import type { WeakSpotKind } from './weak-spot.ts';

/** How long a check of a weak spot counts, and what the season does to it. */
export interface SeasonRule {
	/** Days that drilled holes count for; `null` where none support anything. */
	lasts_d: number | null;
	/** All winter. */
	always: string;
	/** Once the sun or a thaw works on the ice; `null` where the season makes no difference. */
	late: string | null;
	source: string;
}

const NO_SOURCE = 'common practice, no source';

const MOVING_WATER =
	'Thin over faster or warmer water in any frost, and not to be told from above. Drill it anew on each visit.';
const MOVING_WATER_LATE = 'Meltwater runs here first: it opens before the rest.';
const MOVING_WATER_SOURCE =
	'Ashton, Ice in lakes and rivers; New Hampshire Fish and Game; Saskatchewan WSA 2022 on each visit';

/**
 * The rule of each kind of weak spot.
 *
 * A day for landings, cracks and wherever water or air moves under the ice, nothing for a ridge or
 * where the ice broke, otherwise no more than the seven days of the open part. The days are our own rule,
 * derived: no published lifetime was found. Hazards: [AshtonLakeIce] [R]; New Hampshire Fish and Game
 * [R]; Saskatchewan WSA 2022 [R]; NWS Bismarck [R]; US Navy 14069 [R]; Minnesota, Wisconsin, North and
 * South Dakota agencies and the City of Edmonton [R2]; that a ridge changes within hours [M-hi]; one wet
 * crack halves the load [M-hi], how to cross it [M-lo].
 */
export const SEASON_RULES: Record<WeakSpotKind, SeasonRule> = {
	current: {
		lasts_d: 1,
		always: MOVING_WATER,
		late: MOVING_WATER_LATE,
		source: MOVING_WATER_SOURCE
	},
	inletOutlet: {
		lasts_d: 1,
		always: MOVING_WATER,
		late: MOVING_WATER_LATE,
		source: MOVING_WATER_SOURCE
	},
	narrows: {
		lasts_d: 1,
		always: MOVING_WATER,
		late: MOVING_WATER_LATE,
		source: MOVING_WATER_SOURCE
	},
	spring: {
		lasts_d: 1,
		always: 'Thin in one spot and thick beside it; snow hides it. Drill it anew on each visit.',
		late: null,
		source: 'NWS Bismarck; South Dakota GFP, as reported'
	},
	bogOrWeeds: {
		lasts_d: 7,
		always: 'Rotting plants and swampy ground warm the ice from below; gas lies in it.',
		late: 'Dark plants take up the sun, and the ice round them goes early.',
		source: 'Minnesota DNR, as reported; US Navy 14069; the late rule: common practice, no source'
	},
	pressureRidge: {
		lasts_d: null,
		always:
			'Weak ice or open water along it. Wind and changes of temperature move it within hours, so a check lasts for hours and supports nothing; agencies say never to cross one.',
		late: null,
		source: 'Minnesota DNR 2024 and Wisconsin DNR, as reported'
	},
	dockOrBubbler: {
		lasts_d: 1,
		always: 'Open water that changes its shape; a leaking air line opens more of it.',
		late: 'Posts take up the sun and stand in water.',
		source: 'Minnesota DNR and City of Edmonton, as reported'
	},
	landing: {
		lasts_d: 1,
		always:
			'Early on it may be thicker than farther out, but the edge hinges, cracks and gets wet: a check counts for a day.',
		late: 'Gravel, sand, salt and dark ground take up the sun: the landing goes first, and it closes before the lake.',
		source:
			'Ashton, Ice in lakes and rivers; New Hampshire Fish and Game; North Dakota, as reported'
	},
	rocks: {
		lasts_d: 7,
		always: 'Rocks, logs and posts take up the sun and thin the ice round them.',
		late: 'Open water round them comes early.',
		source: 'City of Edmonton and North Dakota, as reported'
	},
	crack: {
		lasts_d: 1,
		always:
			'Wet until somebody has seen it dry: half the load. Cross at a right angle, never go along it. A check counts for a day.',
		late: 'Meltwater runs down it and widens it.',
		source: NO_SOURCE
	},
	drift: {
		lasts_d: 7,
		always: 'Deep snow keeps the ice under it thin, weighs it down, and hides slush and cracks.',
		late: 'It melts into slush and standing water.',
		source:
			'City of Edmonton and North Dakota, as reported; the late rule: common practice, no source'
	},
	brokeThrough: {
		lasts_d: null,
		always:
			'The ice broke here: what caused it is still there, and no hole beside it supports anything.',
		late: null,
		source: NO_SOURCE
	}
};

/** What holes at a point of a route that is no weak spot count for. Our rule, as for the open part. */
export const PLAIN_LASTS_d = 7;
