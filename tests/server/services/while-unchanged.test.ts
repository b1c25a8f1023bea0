import { expect, test } from 'vitest';
import { updateLake } from '../../../src/lib/server/services/lakes.ts';
import { WhileUnchanged } from '../../../src/lib/server/services/while-unchanged.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

async function kept(size = 10) {
	const ctx = await freshContext('2027-02-10T12:00:20Z');
	const { id } = await inventedLake(ctx);
	const unchanged = new WhileUnchanged<{ text: string }>(size);
	const { keep } = await unchanged.look(ctx, id, 'a');
	keep({ text: 'first' });
	const at = (now: string) => ({ ...ctx, now: () => new Date(now) });
	const seen = async (key = 'a', on = ctx) => (await unchanged.look(on, id, key)).value?.text;
	return { ctx, id, unchanged, at, seen };
}

test('what is kept stands while nothing is written and the minute is the same', async () => {
	const { seen, at } = await kept();
	expect(await seen()).toBe('first');
	expect(await seen('a', at('2027-02-10T12:00:59Z'))).toBe('first');
	expect(await seen('b')).toBeUndefined();
});

test('it does not stand in the next minute, nor after the lake has changed', async () => {
	const { ctx, id, seen, at } = await kept();
	expect(await seen('a', at('2027-02-10T12:01:00Z'))).toBeUndefined();
	await updateLake(ctx, id, { name: 'Renamed' });
	expect(await seen()).toBeUndefined();
});

test('what was made of the state before a change is not taken for one of after it', async () => {
	const { ctx, id, unchanged, seen } = await kept();
	const look = await unchanged.look(ctx, id, 'b');
	await updateLake(ctx, id, { name: 'Renamed' });
	look.keep({ text: 'made before' });
	expect(await seen('b')).toBeUndefined();
});

test('what was asked for longest ago goes first', async () => {
	const { ctx, id, unchanged, seen } = await kept(2);
	(await unchanged.look(ctx, id, 'b')).keep({ text: 'second' });
	expect(await seen('a')).toBe('first');
	(await unchanged.look(ctx, id, 'c')).keep({ text: 'third' });
	expect([await seen('a'), await seen('b'), await seen('c')]).toEqual([
		'first',
		undefined,
		'third'
	]);
});

/** Makes texts one after the other, each when it is let go. */
function slowly() {
	const begun: ((text: string) => void)[] = [];
	const make = () => new Promise<{ text: string }>((done) => begun.push((text) => done({ text })));
	const whenBegun = (count: number) => expect.poll(() => begun).toHaveLength(count);
	return { begun, make, whenBegun };
}

test('who asks while it is made of the same shares it', async () => {
	const { ctx, id, unchanged } = await kept();
	const { begun, make, whenBegun } = slowly();
	const all = [1, 2, 3].map(() => unchanged.oneAtATime(ctx, id, 'b', make));
	await whenBegun(1);
	begun[0]?.('only');
	expect(new Set((await Promise.all(all)).map(({ text }) => text))).toEqual(new Set(['only']));
	expect(begun).toHaveLength(1);
});

test('who asks after changes while it is being made is given one that is made after them', async () => {
	const { ctx, id, unchanged } = await kept();
	const { begun, make, whenBegun } = slowly();
	const before = unchanged.oneAtATime(ctx, id, 'b', make);
	await whenBegun(1);
	await updateLake(ctx, id, { name: 'Renamed' });
	const after = unchanged.oneAtATime(ctx, id, 'b', make);
	await updateLake(ctx, id, { name: 'Renamed again' });
	const last = unchanged.oneAtATime(ctx, id, 'b', make);
	begun[0]?.('before');
	expect((await before).text).toBe('before');
	await whenBegun(2);
	begun[1]?.('after both');
	expect((await after).text).toBe('after both');
	expect((await last).text).toBe('after both');
});

test('one that fails is of no account to who asks after a change', async () => {
	const { ctx, id, unchanged } = await kept();
	let fail: (cause: Error) => void = () => undefined;
	const failing = new Promise<never>((_, reject) => (fail = reject));
	const before = unchanged.oneAtATime(ctx, id, 'b', () => failing);
	await new Promise(setImmediate);
	await updateLake(ctx, id, { name: 'Renamed' });
	const after = unchanged.oneAtATime(ctx, id, 'b', async () => ({ text: 'after' }));
	fail(new Error('broken'));
	await expect(before).rejects.toThrow('broken');
	expect((await after).text).toBe('after');
});
