import type { LoadCase } from '#lib/model/load-case.ts';
import { addedWords } from './change-words.ts';
import type { Units } from '../units-setting.ts';

/** The same load with more on it: held against the same row of the charts, and against its weight. */
export function heavier(load: LoadCase, added_kg: number, units: Units): LoadCase {
	return {
		...load,
		id: 'what-if',
		name: `${load.name} with ${addedWords(added_kg, units)}`,
		mass_kg: load.mass_kg + added_kg
	};
}
