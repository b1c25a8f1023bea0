import { expect, test } from 'vitest';
import type { Steps } from '#lib/model/steps.ts';
import { inQuiet, inTurns } from '#lib/server/services/in-turns.ts';

function* busy(name: string, steps: number, done: string[]): Steps<string> {
	for (let step = 0; step < steps; step++) {
		const until_ms = performance.now() + 10;
		while (performance.now() < until_ms);
		yield;
	}
	done.push(name);
	return name;
}

test('others get their turn while it goes on', async () => {
	let turns = 0;
	const timer = setInterval(() => turns++, 1);
	await inTurns(() => busy('long', 30, []));
	clearInterval(timer);
	expect(turns).toBeGreaterThan(5);
});

test('what is asked for first is done first', async () => {
	const done: string[] = [];
	const all = [inTurns(() => busy('a', 8, done)), inTurns(() => busy('b', 1, done))];
	expect(await Promise.all(all)).toEqual(['a', 'b']);
	expect(done).toEqual(['a', 'b']);
});

test('one that fails does not stop the next', async () => {
	const failing = inTurns(() => {
		throw new RangeError('no such day');
	});
	const next = inTurns(() => busy('b', 1, []));
	await expect(failing).rejects.toThrow('no such day');
	expect(await next).toBe('b');
});

test('what nobody waits for comes after what somebody does', async () => {
	const done: string[] = [];
	const quiet = inQuiet(() => busy('quiet', 3, done));
	const wanted = inTurns(() => busy('wanted', 6, done));
	await Promise.all([quiet.result, wanted]);
	expect(done).toEqual(['wanted', 'quiet']);
});

test('what nobody waited for hurries once somebody does', async () => {
	const time_ms = async (hurries: boolean) => {
		const start_ms = performance.now();
		const run = inQuiet(() => busy('quiet', 20, []));
		if (hurries) run.hurry();
		await run.result;
		return performance.now() - start_ms;
	};
	expect(await time_ms(true)).toBeLessThan(await time_ms(false));
});
