import type { Phase } from '../lake-winter.ts';
import type { Mode } from '../findings.ts';

export const MODES: readonly Mode[] = ['prior', 'learned', 'recalibrated'];

/** What each mode knew. */
export const KNEW: Record<Mode, string> = {
	prior: 'weather, freeze-up and the lake’s facts',
	learned: 'and the readings of the lake’s other winters',
	recalibrated: 'and this winter’s earlier readings'
};

export const PHASES: readonly Phase[] = ['growth', 'decay'];

/** @example number(-1.24, 1) // => '−1.2' */
export function number(value: number | null, decimals: number): string {
	if (value === null) return '–';
	const text = value.toFixed(decimals);
	return /^-0(\.0+)?$/.test(text) ? text.slice(1) : text.replace('-', '−');
}

/** @example percent(0.062) // => '6 %' */
export function percent(share: number | null): string {
	return share === null ? '–' : `${Math.round(share * 100)} %`;
}

/** How far a mean is off, in words. @example offset(-1.24, 'cm') // => '1.2 cm too thin' */
export function offset(mean: number, unit: string, [over, under]: [string, string]): string {
	const size = number(Math.abs(mean), 1);
	return size === '0.0' ? `0.0 ${unit} off` : `${size} ${unit} ${mean > 0 ? over : under}`;
}

export const THICK: [string, string] = ['too thick', 'too thin'];
export const LATE: [string, string] = ['too late', 'too early'];

/** @example counted(1, 'reading') // => '1 reading' */
export function counted(count: number, thing: string): string {
	return `${count} ${thing}${count === 1 ? '' : 's'}`;
}

/** @example titled('growth') // => 'Growth' */
export function titled(word: string): string {
	return word.charAt(0).toUpperCase() + word.slice(1);
}
