import { expect, test } from 'vitest';
import { joinedHoles } from '#lib/model/joined-holes.ts';
import { measuredReading } from '../support/measured-reading.ts';

const FIRST = { ...measuredReading('a', '2027-01-10', { total_m: 0.2 }), place: 'Off the mole' };
const MORE = { ...measuredReading('b', '2027-01-10', { total_m: 0.22 }), place: ' off the Mole ' };

test('holes of one place and day are one reading, which keeps its id', () => {
	expect(joinedHoles(FIRST, MORE)).toEqual({ ...FIRST, holes: [...FIRST.holes, ...MORE.holes] });
});

test('a core that one of them saw counts for both, two that differ are two readings', () => {
	expect(joinedHoles(FIRST, { ...MORE, core: 'wet' })?.core).toBe('wet');
	expect(joinedHoles({ ...FIRST, core: 'wet' }, MORE)?.core).toBe('wet');
	expect(joinedHoles({ ...FIRST, core: 'wet' }, { ...MORE, core: 'sound' })).toBeNull();
});

test.each([
	{ on: '2027-01-11' },
	{ place: 'Landing' },
	{ place: null },
	{ kind: 'atLeast' as const },
	{ kind: 'wentThrough' as const },
	{ secondHand: true },
	{ remark: 'by the reeds' }
])('with %j it is a reading of its own', (change) => {
	expect(joinedHoles(FIRST, { ...MORE, ...change })).toBeNull();
});

test('where ice broke is a fact of its own each time', () => {
	const kind = 'wentThrough' as const;
	expect(joinedHoles({ ...FIRST, kind }, { ...MORE, kind })).toBeNull();
});
