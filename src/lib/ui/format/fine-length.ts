import type { Units } from '../units-setting.ts';
import { signed } from './number.ts';

/** Keeps 0.3 cm at 0.3 although its double is a hair off. */
const HAIR = 1e-6;

/**
 * A length of some millimetres, such as the sag under a load, to a tenth of a centimetre or an inch.
 *
 * @example fineLength(0.0064, 'up', metric) // => '0.7 cm'
 */
export function fineLength(metres: number, rounding: 'up' | 'down', units: Units): string {
	const isMetric = units.measure === 'metric';
	const tenths = metres * (isMetric ? 1000 : 10 / 0.0254);
	const whole = rounding === 'up' ? Math.ceil(tenths - HAIR) : Math.floor(tenths + HAIR);
	const shown = signed(Number((whole / 10).toFixed(1)));
	return `${shown} ${isMetric ? 'cm' : 'in'}`;
}
