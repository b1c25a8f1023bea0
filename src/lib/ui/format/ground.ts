import type { GroundWords } from '#lib/model/tracks/track-cautions.ts';
import { METRIC_GROUND } from '#lib/model/tracks/track-cautions.ts';
import type { Units } from '../units-setting.ts';

const FOOT_m = 0.3048;
/** Keeps 3 m at 3 m although its double is a hair off. */
const HAIR = 1e-6;

const FEET: GroundWords = {
	length: (length_m) => `${Math.ceil(length_m / FOOT_m - HAIR)} ft`,
	step: { name: 'foot', length_m: FOOT_m }
};

/** Lengths on the ice in the reader's unit, rounded up. */
export function groundIn({ measure }: Units): GroundWords {
	return measure === 'metric' ? METRIC_GROUND : FEET;
}
