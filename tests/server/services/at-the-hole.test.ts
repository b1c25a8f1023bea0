import { expect, test } from 'vitest';
import type { Context } from '../../../src/lib/server/context.ts';
import { holesIn, logHole } from '../../../src/lib/server/services/at-the-hole.ts';
import { holeEffect } from '../../../src/lib/server/services/hole-effect.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { getPosition } from '../../../src/lib/server/services/reading-positions.ts';
import { listReadings } from '../../../src/lib/server/services/readings.ts';
import { METRIC_WORDS } from '../../../src/lib/model/words.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

/** A lake and a clock that can be put on. */
async function atTheLake() {
	const ctx = await freshContext('2027-01-20T12:00:00Z');
	const { id } = await inventedLake(ctx);
	let now = ctx.now();
	const walking: Context = { ...ctx, now: () => now };
	return {
		id,
		ctx: walking,
		wait_min: (minutes: number) => {
			now = new Date(now.getTime() + minutes * 60_000);
		},
		readings: () => listReadings(walking, id, 'main')
	};
}

function typed(total_m: number, change: Record<string, unknown> = {}, seen = 100) {
	const facts = { on: '2027-01-20', kind: 'measured', place: 'Mole', holes: [{ total_m }] };
	return { reading: readingInput.parse({ ...facts, ...change }), position: null, seen };
}

test('holes of a visit are one reading, each stored at once', async () => {
	const { ctx, id, wait_min, readings } = await atTheLake();
	const first = await logHole(ctx, id, 'main', typed(0.2));
	wait_min(20);
	expect(await logHole(ctx, id, 'main', typed(0.22))).toBe(first);
	const other = await logHole(ctx, id, 'main', typed(0.25, { place: 'Landing' }));
	expect(other).not.toBe(first);
	expect(await logHole(ctx, id, 'main', typed(0.21))).toBe(first);
	expect((await readings()).map(({ holes }) => holes.map(({ total_m }) => total_m))).toEqual([
		[0.2, 0.22, 0.21],
		[0.25]
	]);
});

test('after an hour, or on another site, it is another reading', async () => {
	const { ctx, id, wait_min, readings } = await atTheLake();
	await logHole(ctx, id, 'main', typed(0.2));
	wait_min(61);
	await logHole(ctx, id, 'main', typed(0.22));
	expect(await readings()).toHaveLength(2);
});

test('what is sent twice is stored once, two like holes typed apart are two', async () => {
	const { ctx, id, readings } = await atTheLake();
	const first = await logHole(ctx, id, 'main', typed(0.2, {}, 0));
	expect(await logHole(ctx, id, 'main', typed(0.2, {}, 0))).toBe(first);
	expect(holesIn(await readings())).toBe(1);
	await logHole(ctx, id, 'main', typed(0.2, {}, 1));
	expect(holesIn(await readings())).toBe(2);
	const broke = { kind: 'wentThrough', holes: [], place: 'Reeds' };
	await logHole(ctx, id, 'main', typed(0, broke, 2));
	await logHole(ctx, id, 'main', typed(0, broke, 2));
	expect(await readings()).toHaveLength(2);
});

test('a position stays with its reading', async () => {
	const { ctx, id } = await atTheLake();
	const position = { latitude: 47.40001, longitude: -38.2 };
	const reading = await logHole(ctx, id, 'main', { ...typed(0.2), position });
	expect(await getPosition(ctx, id, reading)).toEqual(position);
	await logHole(ctx, id, 'main', typed(0.21));
	expect(await getPosition(ctx, id, reading)).toEqual(position);
});

test('the effect of the last hole is told for the ice and for the loads', async () => {
	const { ctx, id } = await drilledLake();
	const on = '2027-01-20';
	for (const total_m of [0.12, 0.13, 0.12]) {
		await logHole(ctx, id, 'main', typed(total_m, { on, place: null }));
	}
	const reading = await logHole(ctx, id, 'main', typed(0.11, { on, place: null }));
	const effect = await holeEffect(ctx, id, 'main', reading, METRIC_WORDS);
	expect(effect.reading.holes).toHaveLength(4);
	expect(effect.isAhead).toBe(false);
	const { before, after } = effect.ice ?? expect.fail('nothing is estimated');
	expect(after.p50_m).toBeLessThan(before.p50_m);
	expect(after.bound_m).toBeLessThanOrEqual(before.bound_m);
	expect(effect.loads.find((load) => load.id === 'on-foot')).toMatchObject({ after: 'notYet' });
});

test('a hole whose day’s weather is not in yet says so, and takes from the bound at once', async () => {
	const { ctx, id } = await drilledLake();
	// The last day with weather is 28 January, and it is 10 February.
	const reading = await logHole(ctx, id, 'main', typed(0.05, { on: '2027-02-09' }));
	const effect = await holeEffect(ctx, id, 'main', reading, METRIC_WORDS);
	expect(effect).toMatchObject({ isAhead: true, asOf: '2027-01-28', ice: null });
	expect(effect.loads.every(({ after }) => after !== 'reached')).toBe(true);
});
