import type { Units } from '../units-setting.ts';
import { grouped } from './number.ts';

const POUNDS_PER_KG = 1 / 0.45359237;

/** @example mass(2900, { mass: 'kg', ... }) // => '2,900 kg' */
export function mass(kg: number, units: Units): string {
	return units.mass === 'kg' ? `${grouped(kg)} kg` : `${grouped(kg * POUNDS_PER_KG)} lb`;
}
