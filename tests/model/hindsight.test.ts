import { expect, test } from 'vitest';
import { bandPlace, error_m, hindsight } from '#lib/model/hindsight.ts';
import { inventedHindcast, predictedReading } from '../support/invented-hindcast.ts';

const UNKNOWN = { p05: null, p10: null, p50: null, p90: null, p95: null };

function off(...errors_m: number[]) {
	return hindsight(errors_m.map((error) => predictedReading({ measured_m: 0.25 - error })));
}

test('an error above zero is too thick', () => {
	expect(error_m(predictedReading({ measured_m: 0.2 }))).toBeCloseTo(0.05, 9);
	expect(off(0.01, 0.02, 0.03)?.bias_m).toBeCloseTo(0.02, 9);
	expect(off(-0.01, -0.02, -0.03)?.bias_m).toBeCloseTo(-0.02, 9);
});

test('usual is what two readings in three stayed within, on either side', () => {
	expect(off(0.01, -0.02, 0.09)?.usual_m).toBeCloseTo(0.02, 9);
	expect(off(0.04)?.usual_m).toBeCloseTo(0.04, 9);
	expect(off(0.01, 0.02, -0.03, 0.04, 0.05, -0.06)?.usual_m).toBeCloseTo(0.04, 9);
});

test('one slip of the pen does not decide what is usual', () => {
	expect(off(0.01, 0.01, 0.02, -1.9)?.usual_m).toBeCloseTo(0.02, 9);
});

test('readings inside the band are counted, its edges included', () => {
	expect(bandPlace(predictedReading({ measured_m: 0.2 }))).toBe('inside');
	expect(bandPlace(predictedReading({ measured_m: 0.199 }))).toBe('thinner');
	expect(bandPlace(predictedReading({ measured_m: 0.311 }))).toBe('thicker');
	expect(hindsight(inventedHindcast())).toMatchObject({ count: 10, banded: 10, inside: 9 });
});

test('a reading without a prediction is left out, one without a band is not counted for it', () => {
	const noBand = { ...UNKNOWN, p50: 0.25 };
	const readings = [
		predictedReading(),
		predictedReading({ predicted: UNKNOWN }),
		predictedReading({ predicted: noBand })
	];
	expect(hindsight(readings)).toMatchObject({ count: 2, banded: 1, inside: 1 });
	expect(bandPlace(predictedReading({ predicted: noBand }))).toBeNull();
});

test('without any prediction there is nothing to say', () => {
	expect(hindsight([])).toBeNull();
	expect(hindsight([predictedReading({ predicted: UNKNOWN })])).toBeNull();
});
