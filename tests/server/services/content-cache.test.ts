import { expect, test } from 'vitest';
import { ContentCache } from '#lib/server/services/content-cache.ts';

function counting() {
	let made = 0;
	return () => ++made;
}

test('the same content is made once, whoever asks for it', () => {
	const cache = new ContentCache<number>(3);
	const make = counting();
	expect(cache.get({ on: '2027-01-02', air_degC: -3 }, make)).toBe(1);
	expect(cache.get({ on: '2027-01-02', air_degC: -3 }, make)).toBe(1);
	expect(cache.get({ on: '2027-01-02', air_degC: -3.1 }, make)).toBe(2);
});

test('what was asked for longest ago is made anew', () => {
	const cache = new ContentCache<number>(2);
	const make = counting();
	for (const content of ['a', 'b', 'a', 'c']) cache.get(content, make);
	expect(['a', 'c', 'b'].map((content) => cache.get(content, make))).toEqual([1, 3, 4]);
});

test('what is forgotten is made anew', () => {
	const cache = new ContentCache<number>(2);
	const make = counting();
	cache.get('a', make);
	cache.forget('a');
	expect(cache.get('a', make)).toBe(2);
});
