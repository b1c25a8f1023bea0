import { expect, test } from 'vitest';
import { placeKind } from '#lib/model/place-kind.ts';

test.each([
	[null, 'open'],
	['middle of the bay', 'open'],
	['north landing', 'edge'],
	['by the old crack', 'edge'],
	['Boat ramp', 'edge'],
	['pressure ridge', 'ridge'],
	['landing below the ridge', 'ridge'],
	['Bridgewater bay', 'open']
])('%s is %s', (place, kind) => {
	expect(placeKind(place)).toBe(kind);
});
