import type { RequestEvent } from '@sveltejs/kit';
import { beforeAll, expect, test, vi } from 'vitest';
import { handle } from '../../../src/hooks.server.ts';
import { startContext } from '../../../src/lib/server/context.ts';
import { setPassphrase } from '../../../src/lib/server/services/access/passphrase.ts';
import { openSession } from '../../../src/lib/server/services/access/sessions.ts';
import { insertPerson } from '../../../src/lib/server/storage/people.ts';
import { LOGGED_BY, PERSON_COOKIE } from '../../../src/lib/ui/offline/names.ts';
import { personIn } from '../../../src/lib/ui/offline/person.ts';
import { personCookie } from '../../../src/routes/access/logged-by.ts';
import { PASSPHRASE, VIEWERS } from '../../support/access.ts';
import { inventedLake } from '../../support/fresh-context.ts';

let session: string;

beforeAll(async () => {
	const ctx = await startContext({ FROSTLEDGER_DATA: ':memory:' });
	await setPassphrase(ctx, PASSPHRASE);
	await inventedLake(ctx, { name: 'Pond' });
	const made_at = ctx.now().toISOString();
	const rest = { made_at, joined_at: null, secret_hash: null, joins_once: 0 } as const;
	await insertPerson(ctx.db, { id: 'p-1', name: 'Invented Helper', ...rest });
	await insertPerson(ctx.db, { id: 'p-2', name: 'Another Helper', ...rest });
	session = (await openSession(ctx, { role: 'helper', personId: 'p-1' })).secret;
});

interface Asked {
	method: string;
	/** Whether it comes with the session of `p-1`. */
	isIn?: boolean;
	by?: string;
	known?: string;
}

async function ask({ method, isIn = true, by, known }: Asked) {
	const url = new URL('http://localhost/api/v1/lakes/pond/readings');
	const headers = { origin: url.origin, ...(by === undefined ? {} : { [LOGGED_BY]: by }) };
	const kept: Record<string, string | undefined> = {
		'frostledger-session': isIn ? session : undefined,
		[PERSON_COOKIE]: known
	};
	const event = {
		url,
		request: new Request(url, { method, headers }),
		cookies: { get: (name: string) => kept[name] },
		params: { lake: 'pond' },
		route: { id: '/api/v1/lakes/[lake]/readings' },
		locals: {},
		getClientAddress: () => '127.0.0.1'
	};
	const resolve = vi.fn(async () => new Response('reached'));
	const response = await handle({ event: event as unknown as RequestEvent, resolve });
	return { response, isReached: resolve.mock.calls.length > 0 };
}

test('what its own logger sends is taken, and what says nothing of its logger', async () => {
	expect((await ask({ method: 'POST', by: 'p-1' })).isReached).toBe(true);
	expect((await ask({ method: 'POST' })).isReached).toBe(true);
});

test.each([
	['another helper', 'p-2', true, false],
	['the owner', 'owner', true, false],
	['somebody from before anybody had to sign in', 'machine', true, false],
	['a helper who was removed', 'p-9', true, true],
	['a helper, while nobody is signed in', 'p-1', false, false],
	['a removed helper, while nobody is signed in', 'p-9', false, true]
])('what was logged by %s is stored in no other name', async (_, by, isIn, isGone) => {
	const { response, isReached } = await ask({ method: 'POST', by, isIn });
	expect(isReached).toBe(false);
	expect(response.status).toBe(412);
	expect(await response.json()).toMatchObject({ isGone });
});

test('a device is told who is signed in on it, once', async () => {
	const { response } = await ask({ method: 'GET' });
	const [cookie = ''] = response.headers.getSetCookie();
	const person = personIn(cookie.split(';')[0] ?? '');
	expect(person).toEqual({ id: 'p-1', name: 'Invented Helper' });
	const again = await ask({ method: 'GET', known: JSON.stringify(person) });
	expect(again.response.headers.getSetCookie()).toEqual([]);
	// The answer to a sign-out says for itself what the device is to know.
	expect((await ask({ method: 'POST' })).response.headers.getSetCookie()).toEqual([]);
});

test('a device keeps who was there last while nobody is, and forgets them where nobody has to sign in', () => {
	expect(personCookie(VIEWERS.stranger, 'somebody', true)).toBeNull();
	const machine = { role: 'owner', way: 'machine' } as const;
	expect(personCookie(machine, undefined, true)).toBeNull();
	expect(personCookie(machine, 'somebody', true)).toMatch(/; Max-Age=0; .*; Secure$/);
});
