import { expect, test } from 'vitest';
import { nameAmid } from '#lib/model/load-name.ts';
import { standardLoads } from '#lib/server/services/charts.ts';

test('loads of the charts are small amid a sentence, but for what is short for something', () => {
	expect(standardLoads.map(nameAmid).filter((name) => /^\p{Lu}/u.test(name))).toEqual([
		'ATV and rider',
		'SUV or half-ton pickup'
	]);
	expect(nameAmid({ id: 'on-foot', name: 'One person with gear' })).toBe('one person with gear');
});

test('a name that somebody typed stands as typed, in quotes', () => {
	expect(nameAmid({ id: 'own-1', name: 'Shelter on runners' })).toBe('“Shelter on runners”');
	expect(nameAmid({ id: 'own-2', name: 'the red one' })).toBe('“the red one”');
});
