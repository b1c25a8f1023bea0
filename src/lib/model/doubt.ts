import { WHITE_ICE_FRACTION, effective_m } from './bearing.ts';
import { total_m, type IceColumn } from './column.ts';
import type { Doubt } from './lower-bound.ts';
import type { SeasonDay } from './season.ts';
import type { SinceAnchor } from './since-anchor.ts';

const GROWTH_LEAST_m = 0.025; // without a reading [derived]
const GROWTH_FRACTION = 0.2; // of the thickness, without a reading [derived]
const MELT_FRACTION = 0.3; // of what has melted [derived]
const READ_LEAST_m = 0.02; // within ten days of a reading [derived]
const READ_FRACTION = 0.08; // within ten days of a reading [derived]
const READ_FOR_d = 10;
const FORGOTTEN_AFTER_d = 60; // a reading older than this tells nothing more; our choice
const UNKNOWN_SNOW_FRACTION = 0.25; // of what grew: α from 1.7 to 2.7 with snow [T]; our choice
const SPOT_FRACTION = 0.2; // spread from spot to spot, typically 5 to 50 % [M-lo]
const TAPE_m = 0.01; // a tape in a hole [derived]

/**
 * Least and relative doubt of the layers, without and with a recent reading. The first near what the
 * model errs by on measured winters of northern Wisconsin and eastern Finland; our choice.
 */
const LAYERS = {
	white: { least_m: 0.06, fraction: 0.5, readLeast_m: 0.025, readFraction: 0.2 },
	snow: { least_m: 0.05, fraction: 0.5, readLeast_m: 0.03, readFraction: 0.3 },
	slush: { least_m: 0.02, fraction: 0.6, readLeast_m: 0.02, readFraction: 0.4 }
} as const;

export type Layer = 'clear' | 'white' | 'snow' | 'slush' | 'total' | 'effective';
export type Layered<T> = Record<Layer, T>;

/** The heights of a column by name, whole and effective thickness among them. */
export function layersOf(column: IceColumn): Layered<number> {
	return {
		clear: column.clear_m,
		white: column.white_m,
		snow: column.snow_m,
		slush: column.slush_m,
		total: total_m(column),
		effective: effective_m(column)
	};
}

/**
 * Doubt of each layer of a day's column.
 *
 *   σ_model = max(2.5 cm, 20 % h) in growth, and 30 % of what has melted since the thickest day;
 *   max(2 cm, 8 % h) within ten days of a reading, then back by the share of the ice that is newer
 *   than it, or by its age over 60 days;  σ_spot² = (0.2 h)² + (1 cm)²
 *
 * Days without a temperature add all that they may have changed, since each errs the same way. Unknown
 * snow and a freeze-up known only as between two days (`freezeUp`, by layer) add to it. Clear and
 * effective thickness also carry the doubt of how much of the ice is white. Before the ensemble.
 * Growth, melt and spot figures are derived, not published.
 */
export function doubtOf(
	day: SeasonDay,
	since: SinceAnchor,
	freezeUp: Layered<number>
): Layered<Doubt> {
	const height = layersOf(day.column);
	const white_m = whiteDoubt_m(height, since);
	const ice = (layer: 'clear' | 'total' | 'effective', whiteShare: number): Doubt => ({
		site_m: Math.hypot(
			iceDoubt_m(height[layer], day, since),
			whiteShare * white_m,
			freezeUp[layer]
		),
		spot_m: spot_m(height[layer])
	});
	const other = (layer: 'white' | 'snow' | 'slush', own_m: number): Doubt => ({
		site_m: Math.hypot(own_m, freezeUp[layer]),
		spot_m: spot_m(height[layer])
	});
	return {
		clear: ice('clear', 1),
		white: other('white', white_m),
		snow: other('snow', layerDoubt_m('snow', height.snow, forgotten(since))),
		slush: other('slush', layerDoubt_m('slush', height.slush, forgotten(since))),
		total: ice('total', 0),
		effective: ice('effective', WHITE_ICE_FRACTION)
	};
}

/** No doubt of any layer. */
export const CERTAIN: Layered<number> = layersOf({
	snow_m: 0,
	snowDensity_kg_m3: 0,
	slush_m: 0,
	white_m: 0,
	clear_m: 0,
	liquidFraction: 0
});

function spot_m(height_m: number): number {
	return Math.hypot(SPOT_FRACTION * height_m, TAPE_m);
}

function iceDoubt_m(height_m: number, day: SeasonDay, since: SinceAnchor): number {
	const growth_m = Math.max(GROWTH_LEAST_m, GROWTH_FRACTION * (height_m + day.meltSincePeak_m));
	const free_m = Math.hypot(growth_m, MELT_FRACTION * day.meltSincePeak_m);
	const read_m = Math.hypot(
		Math.max(READ_LEAST_m, READ_FRACTION * height_m),
		MELT_FRACTION * since.melted_m
	);
	const model_m = between(read_m, free_m, forgotten(since));
	const snow_m = day.snowKnown ? 0 : UNKNOWN_SNOW_FRACTION * Math.min(since.grown_m, height_m);
	return Math.hypot(model_m, snow_m) + since.gaps_m;
}

/** No more than the sheet leaves room for; a reading of the total alone tells nothing of it. */
function whiteDoubt_m(height: Layered<number>, since: SinceAnchor): number {
	const own_m = layerDoubt_m('white', height.white, since.layersRead ? forgotten(since) : 1);
	return Math.min(own_m, height.total / 2);
}

function layerDoubt_m(layer: keyof typeof LAYERS, height_m: number, share: number): number {
	const { least_m, fraction, readLeast_m, readFraction } = LAYERS[layer];
	const free_m = Math.max(least_m, fraction * height_m);
	return between(Math.max(readLeast_m, readFraction * height_m), free_m, share);
}

/** How far the last reading is forgotten: 0 within ten days of it, 1 when it tells nothing more. */
function forgotten(since: SinceAnchor): number {
	if (since.read_d === null || since.anchored_m === null) return 1;
	const late_d = since.read_d - READ_FOR_d;
	if (late_d <= 0) return 0;
	const newer = since.grown_m / Math.max(since.anchored_m, GROWTH_LEAST_m);
	return Math.min(1, Math.max(newer, late_d / (FORGOTTEN_AFTER_d - READ_FOR_d)));
}

function between(read_m: number, free_m: number, share: number): number {
	if (free_m <= read_m) return read_m;
	return Math.sqrt(read_m ** 2 + share * (free_m ** 2 - read_m ** 2));
}
