import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { offBy, usualLead_d, type OffByInput } from '#lib/model/leaving/off-by.ts';

const AS_OF = '2027-03-01';

function off(change: Partial<OffByInput> = {}) {
	return offBy({
		days: {
			median: { kind: 'until', on: '2027-03-30' },
			warmEnd: { kind: 'until', on: '2027-03-20' },
			isEndedBySnow: false
		},
		spellFrom: null,
		removalOn: null,
		asOf: AS_OF,
		lead_d: 0,
		...change
	});
}

test('a load is off by the warm end of its thickness, and begun some days before', () => {
	expect(off({ lead_d: 7 })).toEqual({
		on: '2027-03-20',
		reason: 'thickness',
		beginOn: '2027-03-13',
		lead_d: 7
	});
});

test('where snow ends its days, the snow is the reason', () => {
	const until = { kind: 'until', on: '2027-03-20' } as const;
	const days = { median: until, warmEnd: until, isEndedBySnow: true };
	expect(off({ days })).toMatchObject({ on: '2027-03-20', reason: 'snow' });
	expect(off({ days, removalOn: '2027-03-15' }).reason).toBe('removalDate');
});

test('the local removal date comes before what is estimated, also on the same day', () => {
	expect(off({ removalOn: '2027-03-15' })).toMatchObject({
		on: '2027-03-15',
		reason: 'removalDate'
	});
	expect(off({ removalOn: '2027-03-20' }).reason).toBe('removalDate');
	expect(off({ removalOn: '2027-04-01' })).toMatchObject({ on: '2027-03-20', reason: 'thickness' });
});

test('a warm spell that lasts closes the ice the day before it begins', () => {
	expect(off({ spellFrom: '2027-03-18' })).toMatchObject({
		on: '2027-03-17',
		reason: 'warmSpell'
	});
});

test('what should be off by now has today, and one that asks an engineer the removal date', () => {
	const never = {
		median: { kind: 'never' },
		warmEnd: { kind: 'never' },
		isEndedBySnow: false
	} as const;
	expect(off({ days: never })).toMatchObject({ on: AS_OF, reason: 'thickness' });
	expect(off({ removalOn: '2027-02-20' })).toMatchObject({ on: AS_OF, reason: 'removalDate' });
	const unknown = {
		median: { kind: 'unknown' },
		warmEnd: { kind: 'unknown' },
		isEndedBySnow: false
	} as const;
	expect(off({ days: unknown })).toMatchObject({ on: null, reason: null, beginOn: null });
	expect(off({ days: unknown, removalOn: '2027-03-15' }).on).toBe('2027-03-15');
});

test('a reason more never gives a later day', () => {
	const anyDay = fc.integer({ min: -30, max: 60 }).map((shift) => addDays(AS_OF, shift));
	fc.assert(
		fc.property(anyDay, anyDay, fc.integer({ min: 0, max: 60 }), (spellFrom, removalOn, lead_d) => {
			const plain = off({ lead_d });
			const more = off({ lead_d, spellFrom, removalOn });
			expect((more.on ?? '') <= (plain.on ?? '')).toBe(true);
			expect((more.beginOn ?? '') <= (more.on ?? '')).toBe(true);
		})
	);
});

test('what stands frozen in has a week, anything else none', () => {
	expect(usualLead_d({ use: 'truckWithShelter', parked_h: 0 })).toBe(7);
	expect(usualLead_d({ use: 'car', parked_h: 48 })).toBe(7);
	expect(usualLead_d({ use: 'car', parked_h: 3 })).toBe(0);
});
