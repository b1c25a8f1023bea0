import { expect, test } from 'vitest';
import { isCleared } from '#lib/model/cleared-ice.ts';

test('ice counts as cleared until it opens again', () => {
	const cleared = { kind: 'cleared', on: '2027-01-10', snow_m: 0 } as const;
	const reopened = { kind: 'reopened', on: '2027-01-20', refrozeOn: '2027-01-25' } as const;
	expect(isCleared([])).toBe(false);
	expect(isCleared([{ kind: 'packed', on: '2027-01-10', density_kg_m3: null }])).toBe(false);
	expect(isCleared([cleared])).toBe(true);
	expect(isCleared([reopened, cleared])).toBe(false);
	expect(isCleared([cleared, reopened, { ...cleared, on: '2027-02-01' }])).toBe(true);
});
