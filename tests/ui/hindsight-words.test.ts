import { expect, test } from 'vitest';
import { hindsight } from '#lib/model/hindsight.ts';
import { hindsightSentence, hindsightTable } from '#lib/ui/hindsight-words.ts';
import { inventedHindcast, predictedReading } from '../support/invented-hindcast.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;
const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;

const HALF = { count: 12, usual_m: 0.041, bias_m: 0.011, banded: 10, inside: 9 };

test('it tells how far off it usually is, to which side, and how many were in the band', () => {
	expect(hindsightSentence(HALF, METRIC)).toBe(
		'Usually within 4 cm of what was drilled, on average 1 cm too thick. 9 of 10 readings were inside the band, where nine in ten should be.'
	);
	expect(hindsightSentence({ ...HALF, bias_m: -0.02 }, IMPERIAL)).toContain(
		'within 1.5 in of what was drilled, on average 1 in too thin'
	);
	expect(hindsightSentence({ ...HALF, bias_m: 0.002 }, METRIC)).toContain(
		'on average neither too thick nor too thin'
	);
});

test('few readings, none, and none with a band are told as such', () => {
	expect(hindsightSentence(null, METRIC)).toContain('nothing can be said');
	expect(hindsightSentence({ ...HALF, count: 1 }, METRIC)).toBe(
		'Only 1 reading had been predicted: too few to say what is usual.'
	);
	expect(hindsightSentence({ ...HALF, banded: 0, inside: 0 }, METRIC)).not.toContain('band');
});

test('each reading has its row', () => {
	const unknown = { p05: null, p10: null, p50: 0.25, p90: null, p95: null };
	const { columns, rows } = hindsightTable(
		[
			predictedReading(),
			predictedReading({ readingId: 'r2', measured_m: 0.35, daysSince: null }),
			predictedReading({ readingId: 'r3', measured_m: 0.253, predicted: unknown, daysSince: 1 })
		],
		METRIC
	);
	expect(rows.map(({ cells }) => cells)).toEqual([
		['10 Jan 2027', '24 cm', '25 cm', '20 to 31 cm', '1 cm too thick', 'inside', '14 days'],
		[
			'10 Jan 2027',
			'35 cm',
			'25 cm',
			'20 to 31 cm',
			'10 cm too thin',
			'thicker than it',
			'the first'
		],
		['10 Jan 2027', '25 cm', '25 cm', 'not known', 'nothing', 'not known', '1 day']
	]);
	expect(columns).toHaveLength(7);
});

test('the invented winter reads as it was made', () => {
	expect(hindsightSentence(hindsight(inventedHindcast()), METRIC)).toContain('9 of 10 readings');
});
