import { Worker } from 'node:worker_threads';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { earlyIceSteps } from '#lib/model/early/early-ice.ts';
import { outlook } from '#lib/model/outlook.ts';
import { finish } from '#lib/model/steps.ts';
import { changesSteps } from '#lib/server/services/estimates/changes-steps.ts';
import {
	estimate,
	estimateInQuiet,
	startEstimating
} from '#lib/server/services/estimates/estimate.ts';
import { workerStarter } from '#lib/server/services/estimates/start-worker.ts';
import { outlookInQuiet, outlookOf } from '#lib/server/services/outlooks.ts';
import { wordsIn } from '#lib/ui/words.ts';
import { asked, reading } from '../../../support/invented-winter.ts';

const FROST = Array.from({ length: 30 }, (_, day) => -10 + 4 * Math.sin(day));
const inputOf = (deeper_m: number) =>
	asked(FROST, {
		readings: [reading('2026-12-20', [0.15 + deeper_m])],
		past: [],
		until: '2027-01-15'
	});
const INPUT = inputOf(0);

let stop: () => Promise<void>;
let started: Worker[] = [];
/** Jobs that reached a worker. */
let sent = 0;
let told: string[] = [];

/** Workers as the app has them, one of them ready. */
async function withWorkers(most: number): Promise<void> {
	const start = await workerStarter();
	const starter = async () => () => {
		const worker = start();
		started.push(worker);
		const post = worker.postMessage.bind(worker);
		worker.postMessage = (...message: Parameters<typeof post>) => {
			sent++;
			post(...message);
		};
		return worker;
	};
	({ stop } = await startEstimating({ starter, most }));
	await new Promise((done, fail) => {
		started[0]?.once('message', done);
		started[0]?.once('error', fail);
	});
}

beforeEach(() => {
	[started, sent, told] = [[], 0, []];
	stop = async () => undefined;
	vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
		told.push(String(text));
		return true;
	});
});
afterEach(async () => {
	vi.restoreAllMocks();
	await stop();
});

// Runs the model eight times, and cold.
test('a worker’s answers are those of the model to the last bit', async () => {
	await withWorkers(1);
	const outlooks = [INPUT, { ...INPUT, words: wordsIn({ measure: 'imperial', mass: 'lb' }) }];
	for (const input of outlooks)
		expect(await estimate({ kind: 'outlook', content: { input } })).toStrictEqual(outlook(input));
	const early = { input: INPUT, outlook: outlook(INPUT), records: [] };
	expect(await estimate({ kind: 'earlyIce', content: early })).toStrictEqual(
		finish(earlyIceSteps(early))
	);
	expect(
		await estimate({ kind: 'changes', content: { input: INPUT, floodsWith_kg_m2: 10 } })
	).toStrictEqual(finish(changesSteps(INPUT, 10)));
	expect(sent).toBe(4);
}, 90_000);

test('the same input is sent once, whoever asks for it', async () => {
	await withWorkers(2);
	const input = inputOf(0.001);
	const answers = await Promise.all([
		outlookInQuiet(input),
		outlookOf({ ...input }),
		outlookOf(input)
	]);
	expect(answers[0]).toStrictEqual(outlook(input));
	expect(new Set(answers).size).toBe(1);
	expect(sent).toBe(1);
});

test('several are made beside each other, by no more workers than there may be', async () => {
	await withWorkers(2);
	const inputs = [0.002, 0.003, 0.004, 0.005].map(inputOf);
	const all = await Promise.all(
		inputs.map((input) => estimate({ kind: 'outlook', content: { input } }))
	);
	expect(all).toStrictEqual(inputs.map((input) => outlook(input)));
	expect(sent).toBe(4);
	expect(started).toHaveLength(2);
});

test('what somebody waits for goes before what nobody does, also once it is asked for later', async () => {
	await withWorkers(1);
	const done: string[] = [];
	const [first, quiet, hurried, wanted] = ['first', 'quiet', 'hurried', 'wanted'].map(
		(name, at) => ({
			name,
			job: { kind: 'outlook' as const, content: { input: inputOf(0.01 + at / 1000) } }
		})
	);
	if (!first || !quiet || !hurried || !wanted) throw new Error('four were listed');
	const runs = [first, quiet, hurried].map(({ name, job }) => {
		const run = estimateInQuiet(job);
		return { ...run, ended: run.result.then(() => done.push(name)) };
	});
	const last = estimate(wanted.job).then(() => done.push(wanted.name));
	runs[2]?.hurry();
	await Promise.all([...runs.map(({ ended }) => ended), last]);
	expect(done).toEqual(['first', 'hurried', 'wanted', 'quiet']);
});

test('what its worker dies over is answered all the same, and another worker goes on', async () => {
	await withWorkers(1);
	const job = (deeper_m: number) => ({
		kind: 'outlook' as const,
		content: { input: inputOf(deeper_m) }
	});
	await estimate(job(0.02));
	const [cut, waiting] = [estimate(job(0.021)), estimateInQuiet(job(0.022)).result];
	await started[0]?.terminate();
	expect(await cut).toStrictEqual(outlook(inputOf(0.021)));
	expect(await waiting).toStrictEqual(outlook(inputOf(0.022)));
	expect(started).toHaveLength(2);
	expect(told).toHaveLength(1);
	expect(told[0]).toMatch(/a worker that makes estimates/);
});

test('where workers cannot start it is said once, and answers are the same', async () => {
	let tries = 0;
	const starter = async () => () => {
		tries++;
		return new Worker(new URL('data:text/javascript,throw new Error("no memory")'));
	};
	({ stop } = await startEstimating({ starter, most: 2 }));
	const early = outlookOf(inputOf(0.03));
	await vi.waitFor(() => expect(told).toHaveLength(1));
	expect(await early).toStrictEqual(outlook(inputOf(0.03)));
	expect(await outlookOf(inputOf(0.031))).toStrictEqual(outlook(inputOf(0.031)));
	expect(tries).toBe(1);
	expect(told[0]).toMatch(/no memory/);
});

test('an input that cannot be run fails with the model’s own error, and the next is answered', async () => {
	await withWorkers(1);
	const broken = { ...INPUT, weather: INPUT.weather.toReversed() };
	await expect(estimate({ kind: 'outlook', content: { input: broken } })).rejects.toThrow(
		/weather must be sorted/
	);
	expect(await estimate({ kind: 'outlook', content: { input: INPUT } })).toStrictEqual(
		outlook(INPUT)
	);
	expect(sent).toBe(2);
	expect(told).toEqual([]);
});

test('what cannot be copied is run without a worker', async () => {
	await withWorkers(1);
	const odd = { ...INPUT, oddity: () => 1 };
	const words = { ...wordsIn({ measure: 'metric', mass: 'kg' }), mass: () => 'a lot' };
	for (const input of [odd, { ...INPUT, words }])
		expect(await estimate({ kind: 'outlook', content: { input } })).toStrictEqual(outlook(input));
	expect(await estimate({ kind: 'outlook', content: { input: INPUT } })).toStrictEqual(
		outlook(INPUT)
	);
});

test('stopped in the midst, it answers what was asked, ends its workers and says nothing of it', async () => {
	await withWorkers(1);
	const inputs = [0.04, 0.041].map(inputOf);
	const asked = inputs.map((input) => estimate({ kind: 'outlook', content: { input } }));
	const ended = new Promise((done) => started[0]?.once('exit', done));
	await stop();
	await ended;
	expect(await Promise.all(asked)).toStrictEqual(inputs.map((input) => outlook(input)));
	expect(started).toHaveLength(1);
	expect(told).toEqual([]);
});
