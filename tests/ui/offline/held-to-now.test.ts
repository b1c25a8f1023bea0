import { expect, test } from 'vitest';
import { heldToNow } from '#lib/ui/offline/held-to-now.ts';

const EFFECT = {
	asOf: '2027-01-10',
	loads: [
		{
			id: 'a',
			name: 'A',
			before: 'reached' as const,
			after: 'reached' as const,
			reason: 'Holes of 10 Jan'
		},
		{
			id: 'b',
			name: 'B',
			before: 'reached' as const,
			after: 'withheld' as const,
			reason: 'The ice broke'
		},
		{
			id: 'c',
			name: 'C',
			before: 'notYet' as const,
			after: 'notYet' as const,
			reason: 'It asks for more'
		}
	]
};

test('by the day before a hole it is told as it was worked out', () => {
	expect(heldToNow(EFFECT, '2027-01-11', false)).toBe(EFFECT);
});

test.each([
	['an input that ends days before the hole', '2027-01-12', false],
	['an old copy, whatever day is typed', '2027-01-10', true]
])('by %s nothing counts as reached', (_, on, isOldCopy) => {
	const { loads } = heldToNow(EFFECT, on, isOldCopy);
	expect(loads.map(({ before, after }) => [before, after])).toEqual([
		['expectedNotDrilled', 'expectedNotDrilled'],
		['expectedNotDrilled', 'withheld'],
		['notYet', 'notYet']
	]);
	expect(loads[0]?.reason).toContain('ends with 10 Jan');
	expect(loads[1]?.reason).toBe('The ice broke');
	expect(loads[2]?.reason).toBe('It asks for more');
});
