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
