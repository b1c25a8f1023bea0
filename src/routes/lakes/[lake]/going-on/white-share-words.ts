import { thickness } from '#lib/ui/format/length.ts';
import type { Units } from '#lib/ui/units-setting.ts';

/** Less than this is called none: it would be shown as 0 %. */
const LEAST = 0.005;

interface WhiteShare {
	total_m: number;
	/** White ice in all ice, 0 to 1. */
	share: number;
	effective_m: number;
}

/** What the layers of the ice make of its thickness. */
export function whiteShareText({ total_m, share, effective_m }: WhiteShare, units: Units): string {
	const ice = `The ice: ${thickness(total_m, units)}`;
	if (share < LEAST) return `${ice}, none of it white: it counts in full.`;
	return `${ice}, ${Math.round(100 * share)} % of it white, which counts half: ${thickness(effective_m, units)} of clear ice.`;
}
