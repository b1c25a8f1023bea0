import {
	FLOW_REACH_m,
	FLOW_SPACING_m,
	OPEN_SPACING_m,
	SHORE_REACH_m,
	SHORE_SPACING_m
} from '#lib/model/places/hole-plan.ts';
import { distance } from '../format/distance.ts';
import { spacing } from '../format/way.ts';
import type { Units } from '../units-setting.ts';

/** How far apart test holes are planned: spacings rounded down, how far they reach up. */
export function spacingWords(units: Units) {
	return {
		shore: spacing(SHORE_SPACING_m, units),
		shoreReach: distance(SHORE_REACH_m, units),
		flow: spacing(FLOW_SPACING_m, units),
		flowReach: distance(FLOW_REACH_m, units),
		open: spacing(OPEN_SPACING_m, units)
	};
}
