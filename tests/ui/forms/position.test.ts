import { expect, test } from 'vitest';
import { readDegrees, splitPosition } from '#lib/ui/forms/position.ts';

test.each([
	['61.2', 'latitude', 61.2],
	['61,234', 'latitude', 61.234],
	['61°12′N', 'latitude', 61.2],
	['61° 12\' 36" N', 'latitude', 61.21],
	['N 61° 12.6′', 'latitude', 61.21],
	['0°30′S', 'latitude', -0.5],
	['-0°30′', 'latitude', -0.5],
	['25°06′E', 'longitude', 25.1],
	['97°30′W', 'longitude', -97.5],
	['−97.5', 'longitude', -97.5]
] as const)('%s is a %s of %d', (text, axis, degrees) => {
	expect(readDegrees(text, axis)).toBeCloseTo(degrees, 9);
});

test.each(['north', '61°75′N', '61°12′E', '61.5°12′N', '-61°12′S', '1 2 3 4', ''])(
	'"%s" is no latitude',
	(text) => {
		expect(readDegrees(text, 'latitude')).toBeNull();
	}
);

test.each([
	['61.2, 25.1', '61.2', '25.1'],
	['61.2 25.1', '61.2', '25.1'],
	['-61.2,-25.1', '-61.2', '-25.1'],
	['61,2; 25,1', '61,2', '25,1'],
	['61°12′N 25°06′E', '61°12′N', '25°06′E'],
	['61°12′N, 25°06′E', '61°12′N', '25°06′E']
])('the pasted pair "%s" is taken apart', (pair, latitude, longitude) => {
	expect(splitPosition(pair, '')).toEqual({ latitude, longitude });
});

test('a decimal comma alone and a pair beside a longitude are left alone', () => {
	expect(splitPosition('61,2', '')).toEqual({ latitude: '61,2', longitude: '' });
	expect(splitPosition('61.2, 25.1', '7')).toEqual({ latitude: '61.2, 25.1', longitude: '7' });
});
