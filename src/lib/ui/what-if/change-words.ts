import { mass } from '../format/mass.ts';
import { temperatureStep } from '../format/degrees.ts';
import type { Units } from '../units-setting.ts';

/** @example snowWords(0.5) // => 'half of it' */
export function snowWords(factor: number): string {
	if (factor === 0) return 'cleared, and kept so';
	if (factor === 1) return 'as it is';
	if (factor === 2) return 'double';
	return factor < 1 ? `${Math.round(factor * 100)} % of it` : `${factor} times as much`;
}

/** @example warmingWords(-2, metric) // => '2 °C colder' */
export function warmingWords(warming_K: number, units: Units): string {
	if (warming_K === 0) return 'as it is';
	const step = temperatureStep(Math.abs(warming_K), units);
	return `${step} ${warming_K < 0 ? 'colder' : 'warmer'}`;
}

/** @example addedWords(0, metric) // => 'nothing more' */
export function addedWords(added_kg: number, units: Units): string {
	return added_kg === 0 ? 'nothing more' : `${mass(added_kg, units)} more`;
}
