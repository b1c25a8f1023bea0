import { wordsFor, type Words } from '#lib/model/words.ts';
import type { Units } from './units-setting.ts';

/** The reader's units for the model's own sentences. */
export function wordsIn(units: Units): Words {
	return wordsFor(units);
}
