import { expect, test } from 'vitest';
import { anchor } from '#lib/model/anchoring.ts';
import { total_m, type IceColumn } from '#lib/model/column.ts';
import type { Hole, Reading } from '#lib/model/reading.ts';
import { measuredReading } from '../support/measured-reading.ts';

const COLUMN: IceColumn = {
	snow_m: 0.08,
	snowDensity_kg_m3: 220,
	slush_m: 0.02,
	white_m: 0.1,
	clear_m: 0.3,
	liquidFraction: 0.02
};

test('a total keeps clear and white in proportion, and snow and slush as they were', () => {
	const { column } = anchor(COLUMN, [reading({ total_m: 0.2 })]);
	expect(column.clear_m).toBeCloseTo(0.15, 12);
	expect(column.white_m).toBeCloseTo(0.05, 12);
	expect(column).toMatchObject({ snow_m: 0.08, slush_m: 0.02 });
});

test('layers, snow and slush are taken as measured', () => {
	const hole = { clear_m: 0.25, white_m: 0.05, snow_m: 0.2, slush_m: 0 };
	const { column, snowMeasured } = anchor(COLUMN, [reading(hole)]);
	expect(column.clear_m).toBeCloseTo(0.25, 12);
	expect(column.white_m).toBeCloseTo(0.05, 12);
	expect(column).toMatchObject({ snow_m: 0.2, slush_m: 0, snowDensity_kg_m3: 220 });
	expect(snowMeasured).toBe(true);
});

test('one layer and the total give the other', () => {
	const { column } = anchor(COLUMN, [reading({ total_m: 0.3, white_m: 0.12 })]);
	expect(column.clear_m).toBeCloseTo(0.18, 12);
});

test('where layers and total disagree the smaller counts', () => {
	const { column } = anchor(COLUMN, [reading({ total_m: 0.35, clear_m: 0.2, white_m: 0.1 })]);
	expect(total_m(column)).toBeCloseTo(0.3, 12);
});

test('holes of one day count alike, whoever drilled them', () => {
	const { column, anchoredBy } = anchor(COLUMN, [
		{ ...reading({ total_m: 0.3 }), id: 'a' },
		{ ...reading({ total_m: 0.42 }), id: 'b' }
	]);
	expect(total_m(column)).toBeCloseTo(0.36, 12);
	expect(anchoredBy).toEqual(['a', 'b']);
});

test('new snow on an estimate without any is settled snow', () => {
	const bare = { ...COLUMN, snow_m: 0, snowDensity_kg_m3: 0 };
	expect(anchor(bare, [reading({ snow_m: 0.1 })]).column.snowDensity_kg_m3).toBe(250);
});

test('"at least" lifts a thinner sheet to 80 % of what was reached, and never thins it', () => {
	expect(total_m(anchor(COLUMN, [reached(0.6)]).column)).toBeCloseTo(0.48, 12);
	const below = anchor(COLUMN, [reached(0.3)]);
	expect(below.column).toEqual(COLUMN);
	expect(below.anchoredBy).toEqual([]);
});

test('a place where somebody went through does not move the site', () => {
	const broke: Reading = { ...reading({ total_m: 0.02 }), kind: 'wentThrough' };
	expect(anchor(COLUMN, [broke])).toMatchObject({ column: COLUMN, anchoredBy: [], doubtful: [] });
});

test('a reading far too thick is set aside, one far too thin counts', () => {
	const thick = anchor(COLUMN, [reading({ total_m: 2 })]);
	expect(thick).toMatchObject({ column: COLUMN, anchoredBy: [], doubtful: ['r'] });
	const thin = anchor(COLUMN, [reading({ total_m: 0.05 })]);
	expect(total_m(thin.column)).toBeCloseTo(0.05, 12);
	const early = { ...COLUMN, clear_m: 0.05, white_m: 0 };
	expect(anchor(early, [reading({ total_m: 0.3 })]).doubtful).toEqual([]);
});

test('what the core looked like sets the water inside', () => {
	expect(withCore('sound')).toBe(0);
	expect(withCore('wet')).toBe(0.1);
	expect(withCore('candled')).toBe(0.3);
	expect(withCore(null)).toBe(0.02);
});

function reading(hole: Partial<Hole>): Reading {
	return measuredReading('r', '2027-01-20', hole);
}

function reached(depth_m: number): Reading {
	return { ...reading({ total_m: depth_m }), kind: 'atLeast' };
}

function withCore(core: Reading['core']): number {
	return anchor(COLUMN, [{ ...reading({ total_m: 0.4 }), core }]).column.liquidFraction;
}
