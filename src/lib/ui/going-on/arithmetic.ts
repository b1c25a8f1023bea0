import type { AskedParts } from '#lib/model/forecast.ts';
import type { ChartSet } from '#lib/model/load-case.ts';
import { requirement, thickness, thicknessNumber } from '../format/length.ts';
import { mass } from '../format/mass.ts';
import type { Units } from '../units-setting.ts';

/** The ice that is held against a load. */
export interface HeldIce {
	clear_m: number;
	white_m: number;
	/** Lower bound that the load is judged by. */
	bound_m: number | null;
	isVehicle: boolean;
}

/** Less white ice than this is none. */
const HARDLY_ANY_m = 0.005;

/**
 * What the ice counts as, worked out from its layers. Each is rounded down first, so that the sum is that of
 * the figures that are read. @example '12 cm clear + half of 6 cm white = 15 cm, each rounded down'
 */
export function countsAs({ clear_m, white_m }: HeldIce, units: Units): string {
	if (white_m < HARDLY_ANY_m) return `${thickness(clear_m, units)}, all of it clear`;
	const [clear, white] = [clear_m, white_m].map((layer_m) => shown_m(layer_m, units));
	const sum_m = (clear ?? 0) + (white ?? 0) / 2;
	return `${thickness(clear_m, units)} clear + half of ${thickness(white_m, units)} white = ${thickness(sum_m, units)}, each rounded down`;
}

/** How far the bound is from what is asked, in words. */
export function shortOf(bound_m: number | null, required_m: number | null, units: Units): string {
	if (bound_m === null || required_m === null) return '';
	const lacks_m = required_m - bound_m;
	return lacks_m > 0
		? `${requirement(lacks_m, units)} short of that.`
		: `${thickness(-lacks_m, units)} more than that.`;
}

/** One source of what is asked, for the list of them. */
export interface AskedRow {
	id: string;
	who: string;
	asks: string;
	decides: boolean;
}

/** Both published sets, the formula and the freeboard side by side, and which of them decides. */
export function askedRows(
	load: { parts: AskedParts | null; counted_kg: number; parked_h: number },
	chartSet: ChartSet,
	units: Units
): AskedRow[] {
	const { parts, counted_kg, parked_h } = load;
	if (parts === null) return [];
	const { decides, strict_m, common_m, gold_m, afloat_m } = parts;
	const asks = (metres: number | null) =>
		metres === null ? 'an engineer' : requirement(metres, units);
	const byChart = (set: ChartSet) => decides === 'chart' && set === chartSet;
	return [
		{ id: 'strict', who: 'Strict charts', asks: asks(strict_m), decides: byChart('strict') },
		{ id: 'common', who: 'Common charts', asks: asks(common_m), decides: byChart('common') },
		{
			id: 'gold',
			who: `Gold’s formula, ${mass(counted_kg, units)}`,
			asks: asks(gold_m),
			decides: decides === 'gold'
		},
		...(afloat_m === null
			? []
			: [
					{
						id: 'afloat',
						who: `To stay above the water ${standing(parked_h)}`,
						asks: asks(afloat_m),
						decides: decides === 'afloat'
					}
				])
	];
}

/** @example standing(48) // => 'for 48 hours' */
export function standing(parked_h: number): string {
	return parked_h === 1 ? 'for an hour' : `for ${Number(parked_h.toPrecision(3))} hours`;
}

/** A thickness as it is shown, in metres again. */
function shown_m(metres: number, units: Units): number {
	const perUnit_m = units.measure === 'metric' ? 0.01 : 0.0254;
	return Number(thicknessNumber(metres, units)) * perUnit_m;
}
