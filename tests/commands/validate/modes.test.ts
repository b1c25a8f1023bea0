import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import type { LakeWinter } from '../../../src/commands/validate/lake-winter.ts';
import {
	asShipped,
	priorPredictions,
	recalibratedPredictions
} from '../../../src/commands/validate/modes.ts';
import { selectScored } from '../../../src/commands/validate/selection.ts';
import { readTidyFolder } from '../../../src/commands/validate/tidy-folder.ts';
import { inventedFolder } from './tidy-winters.ts';

const FIRST_READING = '2001-12-20';

function invented(thicknesses_cm: number[]): LakeWinter[] {
	const readings = thicknesses_cm.map((total_cm, i) => ({
		on: addDays(FIRST_READING, i * 15),
		total_cm
	}));
	const lakes = [{ code: 'A', freezeUpOn: '2001-12-01', readings }];
	const folder = inventedFolder({ lakes, air_degC: () => -8 });
	return selectScored(readTidyFolder(folder)).winters;
}

const totals_m = (predictions: ReturnType<typeof priorPredictions>) =>
	predictions.map(({ total_m }) => total_m);

test('prior knows no reading: other measurements leave its estimates as they are', () => {
	const estimates = totals_m(priorPredictions(invented([20, 30, 40]), asShipped));
	expect(estimates).toHaveLength(3);
	expect(totals_m(priorPredictions(invented([9, 12, 50]), asShipped))).toEqual(estimates);
	expect(estimates.every((total_m) => total_m !== null && total_m > 0.05)).toBe(true);
});

test("a winter's first reading is not predicted by recalibrated", () => {
	const predictions = recalibratedPredictions(invented([20, 30, 40]), asShipped);
	expect(predictions.map(({ of }) => of.reading.total_m)).toEqual([0.3, 0.4]);
});

test('recalibrated never sees the reading that it predicts, or a later one', () => {
	const before = totals_m(recalibratedPredictions(invented([20, 30, 40, 45]), asShipped));
	const after = totals_m(recalibratedPredictions(invented([20, 30, 52, 45]), asShipped));
	expect(after.slice(0, 2)).toEqual(before.slice(0, 2));
	expect(after[2]).toBeGreaterThan(before[2] ?? Infinity);
});

test('recalibrated goes on from the reading before', () => {
	const [thin] = totals_m(recalibratedPredictions(invented([10, 30]), asShipped));
	const [thick] = totals_m(recalibratedPredictions(invented([25, 30]), asShipped));
	expect(thin).toBeGreaterThan(0.1);
	expect(thick).toBeGreaterThan(0.25);
	expect(thick).toBeGreaterThan(thin ?? Infinity);
});

test('weather of the day of a reading and later ones changes no estimate of it', () => {
	const winters = invented([20]);
	const colder = winters.map((winter) => ({
		...winter,
		weather: winter.weather.map((day) =>
			day.on >= FIRST_READING ? { ...day, air_degC: -40 } : day
		)
	}));
	const estimates = totals_m(priorPredictions(winters, asShipped));
	expect(totals_m(priorPredictions(colder, asShipped))).toEqual(estimates);
});

test('a reading past the end of the weather has no estimate', () => {
	const winters = invented([20]).map((winter) => ({
		...winter,
		weather: winter.weather.filter((day) => day.on < '2001-12-18')
	}));
	expect(totals_m(priorPredictions(winters, asShipped))).toEqual([null]);
});
