import type { Words } from '#lib/model/words.ts';

/** Words are functions, so they are told apart by what they say. */
export function wordsSample(words: Words): string[] {
	return [
		words.thickness(0.123),
		words.requirement(0.123),
		words.depth(0.123),
		words.distance(12.3),
		words.mass(123),
		words.step(12.3),
		words.degreeDays(123),
		words.day('2026-01-23')
	];
}
