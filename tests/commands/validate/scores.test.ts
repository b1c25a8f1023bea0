import { expect, test } from 'vitest';
import type { Case } from '../../../src/commands/validate/lake-winter.ts';
import { groupScores } from '../../../src/commands/validate/groups.ts';
import type { Prediction } from '../../../src/commands/validate/scores.ts';
import { score } from '../../../src/commands/validate/scores.ts';

function prediction(measured_m: number, said: Partial<Prediction>, layers = {}): Prediction {
	const reading = {
		on: '2002-01-10',
		phase: 'growth' as const,
		total_m: measured_m,
		clear_m: null,
		white_m: null,
		snow_m: null,
		layersDisagree: false,
		plainFdd_degCd: 100,
		plainTdd_degCd: 0,
		...layers
	};
	return {
		of: { winter: INVENTED_WINTER, reading, previous: null },
		total_m: null,
		white_m: null,
		snow_m: null,
		p05_m: null,
		p10_m: null,
		p95_m: null,
		crps_m: null,
		...said
	};
}

const INVENTED_WINTER: Case['winter'] = {
	dataset: 'invented',
	lakeKey: 'invented/A',
	lake: {
		latitude: 62,
		longitude: 25,
		elevation_m: null,
		area_km2: null,
		meanDepth_m: null,
		water: 'lake'
	},
	winter: '2001-02',
	freezeUpOn: '2001-12-01',
	iceOutOn: null,
	weather: [],
	readings: []
};

test('errors are estimate minus measured, in centimetres', () => {
	const scores = score([prediction(0.2, { total_m: 0.23 }), prediction(0.3, { total_m: 0.29 })]);
	expect(scores.rmse_cm).toBeCloseTo(Math.sqrt((9 + 1) / 2));
	expect(scores.bias_cm).toBeCloseTo(1);
});

test('white ice and snow are scored where they were measured', () => {
	const scores = score([
		prediction(0.2, { total_m: 0.2, white_m: 0.05, snow_m: 0.1 }, { white_m: 0.09, snow_m: 0.13 }),
		prediction(0.2, { total_m: 0.2, white_m: 0.05, snow_m: 0.1 }, { white_m: 0.03 }),
		prediction(0.2, { total_m: 0.2, white_m: 0.05, snow_m: 0.1 })
	]);
	expect(scores).toMatchObject({ n: 3, white_n: 2, snow_n: 1 });
	expect(scores.white_rmse_cm).toBeCloseTo(Math.sqrt((16 + 4) / 2));
	expect(scores.white_bias_cm).toBeCloseTo(-1);
	expect(scores.whiteSpread_cm).toBeCloseTo(3);
	expect(scores.snow_rmse_cm).toBeCloseTo(3);
});

test('coverage is the share inside the band, below-lower the share thinner than the bound', () => {
	const band = { total_m: 0.3, p05_m: 0.2, p10_m: 0.22, p95_m: 0.4 };
	const scores = score([0.19, 0.21, 0.3, 0.41].map((measured) => prediction(measured, band)));
	expect(scores.coverage90).toBe(0.5);
	expect(scores.belowLower).toBe(0.5);
});

test('what was not said scores null, and a reading without an estimate is counted', () => {
	expect(score([prediction(0.2, {})])).toMatchObject({
		n: 0,
		unanswered: 1,
		rmse_cm: null,
		bias_cm: null,
		crps_cm: null,
		coverage90: null,
		belowLower: null,
		white_rmse_cm: null,
		snow_rmse_cm: null
	});
});

test('thirds split the growth readings by measured thickness', () => {
	const measured_m = [0.5, 0.1, 0.3, 0.2, 0.6, 0.4];
	const predictions = measured_m.map((measured) => prediction(measured, { total_m: 0.3 }));
	const thirds = groupScores(predictions).all?.growth.thirds ?? [];
	expect(thirds.map(({ n, from_cm, to_cm }) => [n, from_cm, to_cm])).toEqual([
		[2, 10, 20],
		[2, 30, 40],
		[2, 50, 60]
	]);
	expect(thirds[0]?.bias_cm).toBeCloseTo(15);
	expect(thirds[2]?.bias_cm).toBeCloseTo(-25);
});
