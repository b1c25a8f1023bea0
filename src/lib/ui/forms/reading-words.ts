import type { Hole, Reading } from '#lib/model/reading.ts';
import { depth, depthNumber, thickness, thicknessNumber } from '#lib/ui/format/length.ts';
import { counted } from '#lib/ui/format/number.ts';
import type { Units } from '#lib/ui/units-setting.ts';

export const KIND_WORDS: Record<Reading['kind'], string> = {
	measured: 'Drilled through',
	atLeast: 'Did not go through',
	wentThrough: 'Went through'
};

export const CORE_WORDS: Record<NonNullable<Reading['core']>, string> = {
	sound: 'core sound',
	wet: 'core wet',
	candled: 'core candled'
};

/** What the holes showed, layer by layer, in the person's units. */
export function holesWords({ kind, holes }: Pick<Reading, 'kind' | 'holes'>, units: Units): string {
	const ice = span(holes.map(iceOf_m), units, { number: thicknessNumber, full: thickness });
	const layers = [
		layer(
			'clear',
			holes.map(({ clear_m }) => clear_m),
			units
		),
		layer(
			'white',
			holes.map(({ white_m }) => white_m),
			units
		),
		layer(
			'slush',
			holes.map(({ slush_m }) => slush_m),
			units
		),
		layer(
			'snow',
			holes.map(({ snow_m }) => snow_m),
			units
		)
	];
	const atLeast = kind === 'atLeast' && ice ? `at least ${ice}` : ice;
	const count = holes.length > 1 ? counted(holes.length, 'hole') : null;
	return [count, atLeast, ...layers, water(holes, units)].filter(Boolean).join(', ');
}

function iceOf_m({ total_m, clear_m, white_m }: Hole): number | null {
	return total_m ?? (clear_m === null || white_m === null ? null : clear_m + white_m);
}

function layer(name: string, depths: readonly (number | null)[], units: Units): string | null {
	const words = span(depths, units, { number: depthNumber, full: depth });
	if (words === null) return null;
	return depths.every((depth_m) => !depth_m) ? `no ${name}` : `${name} ${words}`;
}

function water(holes: readonly Hole[], units: Units): string | null {
	const levels = holes.flatMap(({ freeboard_m }) => (freeboard_m === null ? [] : [freeboard_m]));
	if (levels.length === 0) return null;
	const least = Math.min(...levels);
	if (least < 0) return `water ${depth(-least, units)} over the ice`;
	return `water ${depth(least, units)} below the top of the ice`;
}

interface Writers {
	number: (metres: number, units: Units) => string;
	full: (metres: number, units: Units) => string;
}

/** `22 to 25 cm`, or `22 cm` when they agree as shown. */
function span(depths: readonly (number | null)[], units: Units, write: Writers): string | null {
	const known = depths.filter((depth_m) => depth_m !== null);
	if (known.length === 0) return null;
	const [least, most] = [Math.min(...known), Math.max(...known)];
	const low = write.number(least, units);
	return low === write.number(most, units)
		? write.full(least, units)
		: `${low} to ${write.full(most, units)}`;
}
