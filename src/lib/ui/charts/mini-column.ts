import type { Units } from '../units-setting.ts';
import { rulerTicks } from './ruler.ts';

/** The layers that a small column draws. */
export interface MiniIce {
	snow_m: number;
	slush_m: number;
	white_m: number;
	clear_m: number;
	/** Lower bound of the whole ice. */
	totalLower_m: number | null;
}

/** What columns that stand side by side share, so that they compare. */
export interface MiniScale {
	above_m: number;
	ruler_m: number;
}

export interface MiniDrawing {
	height: number;
	zero: number;
	layers: { kind: 'snow' | 'slush' | 'white' | 'clear'; y: number; height: number }[];
	/** Between these the lower face of the ice may lie. */
	doubt: { from: number; to: number } | null;
	ticks: { y: number; isNumbered: boolean }[];
}

const HEIGHT = 132;
const SHORTEST_RULER_m = 0.3;
/** Less than this reads as none. */
const HARDLY_ANY_m = 0.005;

/** One scale for all. */
export function miniScale(columns: readonly MiniIce[]): MiniScale {
	return {
		above_m: Math.max(0, ...columns.map(({ snow_m, slush_m }) => snow_m + slush_m)),
		ruler_m: Math.max(
			SHORTEST_RULER_m,
			...columns.map(({ white_m, clear_m }) => 1.1 * (white_m + clear_m))
		)
	};
}

/** An ice column without words, for beside them; `null` draws open water or what is not known. */
export function miniColumn(ice: MiniIce | null, scale: MiniScale, units: Units): MiniDrawing {
	const perMetre = HEIGHT / (scale.above_m + scale.ruler_m);
	const zero = scale.above_m * perMetre;
	const ticks = rulerTicks(scale.ruler_m, units).map(({ at_m, text }) => ({
		y: zero + at_m * perMetre,
		isNumbered: text !== null
	}));
	if (ice === null) return { height: HEIGHT, zero, layers: [], doubt: null, ticks };
	let y = zero - (ice.snow_m + ice.slush_m) * perMetre;
	const layers = (['snow', 'slush', 'white', 'clear'] as const).flatMap((kind) => {
		const height = ice[`${kind}_m`] * perMetre;
		y += height;
		return ice[`${kind}_m`] < HARDLY_ANY_m ? [] : [{ kind, y: y - height, height }];
	});
	const total_m = ice.white_m + ice.clear_m;
	const lower_m = ice.totalLower_m;
	const doubt =
		lower_m === null || lower_m >= total_m
			? null
			: { from: zero + Math.max(0, lower_m) * perMetre, to: zero + total_m * perMetre };
	return { height: HEIGHT, zero, layers, doubt, ticks };
}
