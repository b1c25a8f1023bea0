import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import type { LakeWinter } from '../../../src/commands/validate/lake-winter.ts';
import { taughtByOtherWinters } from '../../../src/commands/validate/memories.ts';
import {
	asShipped,
	predictions,
	priorKnowledge,
	type Knowledge
} from '../../../src/commands/validate/modes.ts';
import type { Prediction } from '../../../src/commands/validate/scores.ts';
import { selectScored } from '../../../src/commands/validate/selection.ts';
import { readTidyFolder } from '../../../src/commands/validate/tidy-folder.ts';
import { inventedFolder } from './tidy-winters.ts';

const FIRST_READING = '2001-12-20';

/** A lake of an invented winter for each code; the same code is another winter of the same lake. */
function invented(...lakes: (readonly [code: string, thicknesses_cm: number[]])[]): LakeWinter[] {
	return lakes.flatMap(([code, thicknesses_cm], index) => {
		const readings = thicknesses_cm.map((total_cm, i) => ({
			on: addDays(FIRST_READING, i * 15),
			total_cm
		}));
		const of = [{ code, freezeUpOn: '2001-12-01', readings }];
		const { winters } = selectScored(
			readTidyFolder(inventedFolder({ lakes: of, air_degC: () => -8 }))
		);
		return winters.map((winter) => ({ ...winter, winter: `${2001 + index}-0${2 + index}` }));
	});
}

const PRIOR = priorKnowledge(asShipped);
const RECALIBRATED: Knowledge = { ...PRIOR, usesReadings: true };

function learned(winters: readonly LakeWinter[]): Knowledge {
	return { ...PRIOR, memoryOf: taughtByOtherWinters(winters, asShipped) };
}

const totals_m = (said: readonly Prediction[]) => said.map(({ total_m }) => total_m);

test('prior knows no reading: other measurements leave its estimates as they are', () => {
	const estimates = totals_m(predictions(invented(['A', [20, 30, 40]]), PRIOR));
	expect(estimates).toHaveLength(3);
	expect(totals_m(predictions(invented(['A', [9, 12, 50]]), PRIOR))).toEqual(estimates);
	expect(estimates.every((total_m) => total_m !== null && total_m > 0.05)).toBe(true);
});

test('a prediction is a whole distribution: its bounds lie in order about the estimate', () => {
	for (const said of predictions(invented(['A', [20, 30, 40]]), PRIOR)) {
		const { p05_m, p10_m, total_m, p95_m, crps_m } = said;
		const quantiles = [p05_m, p10_m, total_m, p95_m].map((value) => value ?? NaN);
		expect(quantiles.toSorted((a, b) => a - b)).toEqual(quantiles);
		expect((p95_m ?? 0) - (p05_m ?? 0)).toBeGreaterThan(0.05);
		expect(crps_m).toBeGreaterThan(0);
		expect(said.white_m).toBe(0);
		expect(said.snow_m).toBe(0);
	}
});

test("a winter's first reading is not predicted by recalibrated", () => {
	const said = predictions(invented(['A', [20, 30, 40]]), RECALIBRATED);
	expect(said.map(({ of }) => of.reading.total_m)).toEqual([0.3, 0.4]);
});

test('recalibrated never sees the reading that it predicts, or a later one', () => {
	const before = totals_m(predictions(invented(['A', [20, 30, 40, 45]]), RECALIBRATED));
	const after = totals_m(predictions(invented(['A', [20, 30, 52, 45]]), RECALIBRATED));
	expect(after.slice(0, 2)).toEqual(before.slice(0, 2));
	expect(after[2]).toBeGreaterThan(before[2] ?? Infinity);
});

test('recalibrated goes on from the reading before', () => {
	const [thin] = totals_m(predictions(invented(['A', [10, 30]]), RECALIBRATED));
	const [thick] = totals_m(predictions(invented(['A', [25, 30]]), RECALIBRATED));
	expect(thin).toBeGreaterThan(0.1);
	expect(thick).toBeGreaterThan((thin ?? Infinity) + 0.05);
});

test('readings make recalibrated surer than prior', () => {
	const winters = invented(['A', [20, 30, 38, 45]]);
	const width_m = (said: readonly Prediction[]) =>
		(said.at(-1)?.p95_m ?? NaN) - (said.at(-1)?.p05_m ?? NaN);
	expect(width_m(predictions(winters, RECALIBRATED))).toBeLessThan(
		width_m(predictions(winters, PRIOR))
	);
});

test('learned goes by the other winters of the lake: thick ones raise its estimate, thin ones lower it', () => {
	const thick = invented(['A', [20, 30, 40]], ['A', [45, 62, 75]]);
	const thin = invented(['A', [20, 30, 40]], ['A', [12, 20, 26]]);
	const last_m = (winters: LakeWinter[]) =>
		totals_m(predictions(winters, learned(winters)))[2] ?? NaN;
	const untaught_m = totals_m(predictions(thick, PRIOR))[2] ?? NaN;
	expect(last_m(thick)).toBeGreaterThan(untaught_m);
	expect(last_m(thin)).toBeLessThan(untaught_m - 0.01);
});

test('learned never sees its own winter: other measurements leave its estimates as they are', () => {
	const estimates = (own_cm: number[]) => {
		const winters = invented(['A', own_cm], ['A', [45, 62, 75]]);
		return totals_m(predictions(winters, learned(winters))).slice(0, 3);
	};
	expect(estimates([20, 30, 40])).toEqual(estimates([9, 12, 50]));
});

test('learned never sees another lake', () => {
	const alone = invented(['A', [20, 30, 40]]);
	const beside = invented(['A', [20, 30, 40]], ['B', [45, 62, 75]]);
	const first = (winters: LakeWinter[]) =>
		totals_m(predictions(winters, learned(winters))).slice(0, 3);
	expect(first(beside)).toEqual(first(alone));
	expect(first(alone)).toEqual(totals_m(predictions(alone, PRIOR)));
});

test('weather of the day of a reading and later ones changes no estimate of it', () => {
	const winters = invented(['A', [20]]);
	const colder = winters.map((winter) => ({
		...winter,
		weather: winter.weather.map((day) =>
			day.on >= FIRST_READING ? { ...day, air_degC: -40 } : day
		)
	}));
	expect(totals_m(predictions(colder, PRIOR))).toEqual(totals_m(predictions(winters, PRIOR)));
});

test('a reading past the end of the weather has no estimate', () => {
	const winters = invented(['A', [20]]).map((winter) => ({
		...winter,
		weather: winter.weather.filter((day) => day.on < '2001-12-18')
	}));
	expect(totals_m(predictions(winters, PRIOR))).toEqual([null]);
});
