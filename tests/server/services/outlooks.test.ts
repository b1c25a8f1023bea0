import { setImmediate as turn } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import { outlook } from '#lib/model/outlook.ts';
import { METRIC_WORDS } from '#lib/model/words.ts';
import { outlookInQuiet, outlookOf } from '#lib/server/services/outlooks.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { asked, reading, weather } from '../../support/invented-winter.ts';

const FROST = Array.from({ length: 60 }, () => -10);
const INPUT = asked(FROST, { readings: [reading('2027-01-10', [0.25])] });
const AHEAD = { ...INPUT, past: [], until: '2027-03-20' };

test('it is the answer of the model, days to come included', async () => {
	expect(await outlookOf(AHEAD)).toEqual(outlook(AHEAD));
});

test('the same input is run once, and what differs in it anew', async () => {
	const first = await outlookOf(INPUT);
	expect(await outlookOf({ ...INPUT })).toBe(first);
	const colder = { ...INPUT, weather: weather('2026-12-01', FROST.with(3, -11)) };
	const other = await outlookOf(colder);
	expect(other?.forecast.days.at(-1)?.fdd_degCd).toBeCloseTo(591, 6);
	expect(first?.forecast.days.at(-1)?.fdd_degCd).toBeCloseTo(590, 6);
});

test('units that its texts are written in are kept apart', async () => {
	const inches = wordsIn({ measure: 'imperial', mass: 'lb' });
	const texts = async (words: typeof METRIC_WORDS) =>
		(await outlookOf({ ...INPUT, words }))?.forecast.loads.map(({ reason }) => reason).join(' ');
	expect(await texts(METRIC_WORDS)).toMatch(/\d cm/);
	expect(await texts(inches)).toMatch(/\d in/);
});

test('without a freeze-up the answer is that there is none, and stays so', async () => {
	const none = { ...INPUT, record: { ...INPUT.record, freezeUpOn: null } };
	expect(await outlookOf(none)).toBeNull();
	expect(await outlookOf(none)).toBeNull();
});

test('an input that cannot be run fails each time, and does not keep others waiting', async () => {
	const broken = { ...INPUT, weather: INPUT.weather.toReversed() };
	await expect(outlookOf(broken)).rejects.toThrow();
	await expect(outlookOf(broken)).rejects.toThrow();
	expect(await outlookOf(INPUT)).toEqual(outlook(INPUT));
});

test('an answer is kept without what it was made from', async () => {
	setFlagsFromString('--expose-gc');
	const collect = runInNewContext('gc') as () => void;
	const ask = async (make: typeof outlookOf, depth_m: number) => {
		const input = { ...INPUT, readings: [reading('2027-01-10', [depth_m])] };
		await make(input);
		return new WeakRef(input);
	};
	const asked = [await ask(outlookOf, 0.26), await ask(outlookInQuiet, 0.27)];
	await turn();
	collect();
	expect(asked.map((each) => each.deref())).toEqual([undefined, undefined]);
});
