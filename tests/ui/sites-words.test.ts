import { expect, test } from 'vitest';
import { sitesSentence } from '#lib/ui/sites-words.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

const site = (name: string, totalLower_m: number | null) => ({
	name,
	day: { total_m: 0.5, totalLower_m }
});

test('one site is the lake, of several the thinnest is named', () => {
	const one = [site('Main', 0.4)];
	expect(sitesSentence(one, METRIC)).toBe('One site: all of the lake counts as one.');
	const more = [...one, site('Bay', 0.35), site('Cove', null), { name: 'Inlet', day: null }];
	expect(sitesSentence(more, METRIC)).toBe(
		'4 sites: Bay may be the thinnest, 35 cm at its lower bound; 1 without an estimate.'
	);
});
