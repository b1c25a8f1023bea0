import type { RequestEvent } from '@sveltejs/kit';
import { beforeAll, expect, test, vi } from 'vitest';
import { handle } from '../../../src/hooks.server.ts';
import { startContext, type Context } from '../../../src/lib/server/context.ts';
import { setPassphrase } from '../../../src/lib/server/services/access/passphrase.ts';
import { openSession } from '../../../src/lib/server/services/access/sessions.ts';
import { insertPerson } from '../../../src/lib/server/storage/people.ts';
import { insertGuestLink } from '../../../src/lib/server/storage/guest-links.ts';
import { allCalls } from '../../support/calls.ts';
import { PASSPHRASE, type Who } from '../../support/access.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import { ROLE_TABLE } from './role-table.ts';

const WHO: readonly Who[] = ['owner', 'helper', 'guestWithPlaces', 'guest', 'stranger'];
const secrets: Partial<Record<Who, string>> = {};

async function opened(): Promise<Context> {
	const ctx = await startContext({ FROSTLEDGER_DATA: ':memory:' });
	await setPassphrase(ctx, PASSPHRASE);
	await inventedLake(ctx, { name: 'Pond' });
	await inventedLake(ctx, { name: 'Other' });
	const made_at = ctx.now().toISOString();
	const person = { id: 'p-1', name: 'Invented Helper', made_at, joined_at: null };
	await insertPerson(ctx.db, { ...person, secret_hash: null, joins_once: 0 });
	for (const [id, sees_places] of [['g-0', 0] as const, ['g-1', 1] as const]) {
		const link = { id, lake_id: 'pond', name: 'Invented guest', sees_places, opened_at: null };
		await insertGuestLink(ctx.db, { ...link, made_at, secret_hash: id.padEnd(64, '0') });
	}
	return ctx;
}

beforeAll(async () => {
	const ctx = await opened();
	const open = async (who: Parameters<typeof openSession>[1]) =>
		(await openSession(ctx, who)).secret;
	secrets.owner = await open({ role: 'owner' });
	secrets.helper = await open({ role: 'helper', personId: 'p-1' });
	secrets.guest = await open({ role: 'guest', guestLinkId: 'g-0' });
	secrets.guestWithPlaces = await open({ role: 'guest', guestLinkId: 'g-1' });
});

/** Whether the route itself was reached, and else what was answered. */
async function ask(who: Who, call: string, lake = 'pond') {
	const [method = '', route = ''] = call.split(' ');
	const url = new URL(`http://localhost${route.replace('[lake]', lake)}`);
	const isAction = method.startsWith('?');
	if (isAction && method !== '?/default') url.searchParams.set(method.slice(1), '');
	const headers = { accept: 'text/html', origin: url.origin };
	const request = new Request(url, { method: isAction ? 'POST' : method, headers });
	const cookies = { get: (name: string) => (name.includes('session') ? secrets[who] : undefined) };
	const params = route.includes('[lake]') ? { lake } : {};
	const getClientAddress = () => '127.0.0.1';
	const of = { route: { id: route }, locals: {}, getClientAddress };
	const event = { url, request, cookies, params, ...of };
	const resolve = vi.fn(async () => new Response('reached'));
	const response = await handle({ event: event as unknown as RequestEvent, resolve });
	return { isReached: resolve.mock.calls.length > 0, status: response.status };
}

test('the table of roles names every call once', () => {
	expect(ROLE_TABLE.map(([call]) => call).toSorted()).toEqual(allCalls());
});

test.each(ROLE_TABLE)('%s is for %s', async (call, allowed) => {
	const reached: Who[] = [];
	for (const who of WHO) {
		const { isReached, status } = await ask(who, call);
		if (isReached) reached.push(who);
		else if (who === 'stranger') expect([303, 401], `${call} by ${who}`).toContain(status);
		else expect(status, `${call} by ${who}`).toBe(403);
	}
	expect(reached).toEqual(WHO.slice(0, WHO.indexOf(allowed) + 1));
});

test.each(ROLE_TABLE.filter(([call]) => call.includes('[lake]')))(
	'%s of another lake is nowhere for a guest',
	async (call) => {
		for (const who of ['guest', 'guestWithPlaces'] as const) {
			const { isReached, status } = await ask(who, call, 'other');
			expect({ isReached, status }).toEqual({ isReached: false, status: 404 });
		}
	}
);

test.each(WHO.slice(1))('what stands in no table is refused to a %s', async (who) => {
	expect((await ask(who, 'GET /lakes/[lake]/not-listed')).isReached).toBe(false);
	expect((await ask(who, '?/notListed /lakes/[lake]/readings')).isReached).toBe(false);
	expect((await ask(who, 'DELETE /lakes/[lake]/readings')).isReached).toBe(false);
});
