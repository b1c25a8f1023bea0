import { expect, test } from 'vitest';
import { openMembers, putMember, takeMember, type Members } from '#lib/model/ensemble/members.ts';
import { openSite } from '#lib/model/site-ice.ts';

const ICE = {
	...openSite(),
	snow_m: 0.11,
	snowDensity_kg_m3: 222,
	slush_m: 0.033,
	white_m: 0.044,
	clear_m: 0.155,
	liquidFraction: 0.066,
	crust_m: 0.0077,
	waterHeat_J_m2: 8.8e6
};

const arrays = (members: Members) =>
	Object.values(members).filter((value): value is Float64Array => value instanceof Float64Array);

test('what is put into a member comes out of it, and of no other', () => {
	const members = openMembers(3);
	putMember(members, 1, ICE);
	const taken = openSite();
	takeMember(members, 1, taken);
	expect(taken).toEqual(ICE);
	for (const other of [0, 2]) {
		takeMember(members, other, taken);
		expect(taken).toEqual(openSite());
	}
});

test('everything that a site is made of is kept: an array each', () => {
	const members = openMembers(2);
	expect(arrays(members)).toHaveLength(Object.keys(openSite()).length);
	expect(new Set(arrays(members)).size).toBe(arrays(members).length);
	expect(arrays(members).every((values) => values.length === 2)).toBe(true);
});
