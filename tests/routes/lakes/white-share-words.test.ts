import { expect, test } from 'vitest';
import { whiteShareText } from '../../../src/routes/lakes/[lake]/going-on/white-share-words.ts';

const UNITS = { measure: 'metric', mass: 'kg' } as const;

test('white ice counts half, and the share says of how much', () => {
	expect(whiteShareText({ total_m: 0.4, share: 0.25, effective_m: 0.35 }, UNITS)).toBe(
		'The ice: 40 cm, 25 % of it white, which counts half: 35 cm of clear ice.'
	);
});

test('ice without white has no share of it', () => {
	expect(whiteShareText({ total_m: 0.14, share: 0.004, effective_m: 0.14 }, UNITS)).toBe(
		'The ice: 14 cm, none of it white: it counts in full.'
	);
});
