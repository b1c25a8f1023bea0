import { expect, test } from 'vitest';
import { addDays, daysBetween } from '#lib/model/calendar.ts';
import { selectScored } from '../../../src/commands/validate/selection.ts';
import { readTidyFolder } from '../../../src/commands/validate/tidy-folder.ts';
import { inventedFolder } from './tidy-winters.ts';

const FREEZE_UP = '2001-12-01';
const TEN_BELOW = () => -10;

type Lake = Parameters<typeof inventedFolder>[0]['lakes'][number];

function select(lake: Partial<Lake>, air_degC: (on: string) => number | null = TEN_BELOW) {
	const readings = [{ on: '2002-01-10', total_cm: 20 }];
	const lakes = [{ code: 'A', freezeUpOn: FREEZE_UP, readings, ...lake }];
	return selectScored(readTidyFolder(inventedFolder({ lakes, air_degC })));
}

test('a measured reading after freeze-up counts, with its degree-days from the freeze-up day on', () => {
	const { winters } = select({});
	expect(winters).toHaveLength(1);
	expect(winters[0]?.readings).toHaveLength(1);
	expect(winters[0]?.readings[0]?.plainFdd_degCd).toBeCloseTo(400);
});

test.each(['ice was open in January', 'Opened again on 3 January', 'open'])(
	'a winter noted "%s" is left out',
	(notes) => {
		expect(select({ notes })).toMatchObject({ winters: [], leftOut: { opened: 1 } });
	}
);

test.each(['reopening not seen', 'ice already measured at the drilled spot on 1989-11-30'])(
	'a winter noted "%s" counts',
	(notes) => {
		expect(select({ notes }).winters).toHaveLength(1);
	}
);

test.each(['spike', 'suspect_value', 'layers_do_not_sum;spike'])(
	'a reading marked %s is left out',
	(qc) => {
		const { winters, leftOut } = select({ readings: [{ on: '2002-01-10', total_cm: 20, qc }] });
		expect(winters).toEqual([]);
		expect(leftOut.doubtful).toBe(1);
	}
);

test('layers that do not sum leave the reading in and are remembered', () => {
	const qc = 'layers_do_not_sum';
	const { winters } = select({ readings: [{ on: '2002-01-10', total_cm: 20, qc }] });
	expect(winters[0]?.readings[0]?.layersDisagree).toBe(true);
});

test('a row without a whole thickness is no reading of thickness', () => {
	const readings = [{ on: '2002-01-10', total_cm: '', clear_cm: 12 }];
	expect(select({ readings })).toMatchObject({ winters: [], leftOut: { noThickness: 1 } });
});

test('a reading on the freeze-up day or before is left out', () => {
	const readings = [
		{ on: '2001-11-20', total_cm: 3 },
		{ on: FREEZE_UP, total_cm: 3 }
	];
	expect(select({ readings }).leftOut.notAfterFreezeUp).toBe(2);
});

test('a winter without a freeze-up date on record is left out', () => {
	const readings = [{ on: '2003-01-10', total_cm: 20 }];
	expect(select({ readings }).leftOut.noFreezeUp).toBe(1);
});

test.each([
	[4, 1],
	[5, 0]
])('with %d of 40 days without temperature, %d winters count', (gapDays, count) => {
	const air_degC = (on: string) => {
		const day = daysBetween(FREEZE_UP, on);
		return day >= 0 && day < gapDays ? null : -10;
	};
	expect(select({}, air_degC).winters).toHaveLength(count);
});

test.each([
	[-0.4, 0],
	[-20, 1]
])('a single day at %d °C makes %d scored winters: five degree-days are needed', (cold_degC, n) => {
	const air_degC = (on: string) => (on === FREEZE_UP ? cold_degC : 20);
	expect(select({}, air_degC).winters).toHaveLength(n);
});

test('growth runs to the first of equal largest readings, decay follows it', () => {
	const thicknesses_cm = [20, 31, 30, 31, 12];
	const readings = thicknesses_cm.map((total_cm, i) => ({
		on: addDays('2002-01-10', i * 10),
		total_cm
	}));
	const phases = select({ readings }).winters[0]?.readings.map(({ phase }) => phase);
	expect(phases).toEqual(['growth', 'growth', 'decay', 'decay', 'decay']);
});

test('a spike does not end growth', () => {
	const readings = [
		{ on: '2002-01-10', total_cm: 20 },
		{ on: '2002-01-20', total_cm: 200, qc: 'spike' },
		{ on: '2002-01-30', total_cm: 30 }
	];
	const phases = select({ readings }).winters[0]?.readings.map(({ phase }) => phase);
	expect(phases).toEqual(['growth', 'growth']);
});
