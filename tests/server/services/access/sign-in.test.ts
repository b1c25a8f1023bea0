import { expect, test } from 'vitest';
import {
	removePassphrase,
	setPassphrase
} from '../../../../src/lib/server/services/access/passphrase.ts';
import {
	closeAllSessions,
	closeSession,
	closeSessionsOf,
	openSession,
	SESSION_D
} from '../../../../src/lib/server/services/access/sessions.ts';
import { signIn } from '../../../../src/lib/server/services/access/sign-in.ts';
import { viewerOf } from '../../../../src/lib/server/services/access/viewer.ts';
import type { Context } from '../../../../src/lib/server/context.ts';
import { insertPerson } from '../../../../src/lib/server/storage/people.ts';
import { PASSPHRASE } from '../../../support/access.ts';
import { freshContext } from '../../../support/fresh-context.ts';

const STRANGER = { role: 'stranger', way: 'none' };
const OWNER = { role: 'owner', way: 'session' };

async function locked(): Promise<Context> {
	const ctx = await freshContext();
	await setPassphrase(ctx, PASSPHRASE);
	return ctx;
}

const seen = (ctx: Context, session: string | null) => viewerOf(ctx, { session, token: null });

async function secretOf(ctx: Context, device: string | null = null) {
	const outcome = await signIn(ctx, { passphrase: PASSPHRASE, address: '192.0.2.1', device });
	if (outcome.status !== 'in') throw new Error(`not signed in: ${outcome.status}`);
	return { secret: outcome.session.secret, device: outcome.device };
}

test('without a passphrase everybody on this machine is the owner', async () => {
	const ctx = await freshContext();
	expect(await seen(ctx, null)).toEqual({ role: 'owner', way: 'machine' });
});

test('where others can reach the app and the passphrase is taken away, nobody is let in', async () => {
	const ctx = { ...(await freshContext()), reachableBy: 'HOST is "0.0.0.0"' };
	expect(await seen(ctx, null)).toEqual(STRANGER);
	await setPassphrase(ctx, PASSPHRASE);
	const { secret } = await secretOf(ctx);
	await removePassphrase(ctx);
	expect(await seen(ctx, secret)).toEqual(STRANGER);
});

test('the passphrase lets the owner in; a digest of the secret is stored and not the secret', async () => {
	const ctx = await locked();
	expect(await seen(ctx, null)).toEqual(STRANGER);
	const { secret } = await secretOf(ctx);
	expect(secret).toMatch(/^[\w-]{43}$/);
	expect(await seen(ctx, secret)).toEqual(OWNER);
	expect(await seen(ctx, `${secret.slice(0, -1)}_`)).toEqual(STRANGER);
	const stored = await ctx.db.selectFrom('session').selectAll().execute();
	expect(JSON.stringify(stored)).not.toContain(secret);
	expect(await seen(ctx, stored[0]?.secret_hash ?? '')).toEqual(STRANGER);
});

test('a session ends by itself, and those that are over are cleared away', async () => {
	const ctx = await locked();
	const { secret } = await secretOf(ctx);
	const days = (d: number) => new Date(ctx.now().getTime() + d * 86_400_000);
	const later = { ...ctx, now: () => days(SESSION_D.owner) };
	expect(await seen({ ...ctx, now: () => days(SESSION_D.owner - 1) }, secret)).toEqual(OWNER);
	expect(await seen(later, secret)).toEqual(STRANGER);
	await openSession(later, { role: 'owner' });
	expect(await ctx.db.selectFrom('session').selectAll().execute()).toHaveLength(1);
});

test('signing out ends one session, signing out everywhere all of that person', async () => {
	const ctx = await locked();
	const person = { id: 'p-1', name: 'Invented', made_at: '', joined_at: null };
	await insertPerson(ctx.db, { ...person, secret_hash: null, joins_once: 0 });
	const [first, second] = [await secretOf(ctx), await secretOf(ctx)];
	const helper = await openSession(ctx, { role: 'helper', personId: 'p-1' });
	await closeSession(ctx, first.secret);
	expect(await seen(ctx, first.secret)).toEqual(STRANGER);
	expect(await seen(ctx, second.secret)).toEqual(OWNER);
	await closeSessionsOf(ctx, null);
	expect(await seen(ctx, second.secret)).toEqual(STRANGER);
	expect(await seen(ctx, helper.secret)).toMatchObject({ role: 'helper', name: 'Invented' });
	await closeAllSessions(ctx);
	expect(await seen(ctx, helper.secret)).toEqual(STRANGER);
});

test('another passphrase signs the owner out', async () => {
	const ctx = await locked();
	const { secret } = await secretOf(ctx);
	await setPassphrase(ctx, 'another four words here');
	expect(await seen(ctx, secret)).toEqual(STRANGER);
});

test('who fails has to wait, longer each time; the right passphrase is not looked at meanwhile', async () => {
	const ctx = await locked();
	let now_ms = ctx.now().getTime();
	const clocked = { ...ctx, now: () => new Date(now_ms) };
	const attempt = (passphrase: string, device: string | null = null) =>
		signIn(clocked, { passphrase, address: '192.0.2.9', device });
	const { device } = await secretOf(ctx);
	for (let n = 0; n < 3; n++) expect(await attempt('not this one')).toEqual({ status: 'wrong' });
	expect(await attempt(PASSPHRASE)).toEqual({ status: 'wait', wait_s: 1 });
	now_ms += 1000;
	expect(await attempt('not this one')).toEqual({ status: 'wrong' });
	expect(await attempt(PASSPHRASE)).toEqual({ status: 'wait', wait_s: 2 });
	// The owner's browser is not held up by who fails from the same address.
	expect((await attempt(PASSPHRASE, device)).status).toBe('in');
	expect(await attempt(PASSPHRASE, 'a device that nobody knows')).toMatchObject({ status: 'wait' });
	now_ms += 2000;
	expect((await attempt(PASSPHRASE)).status).toBe('in');
	expect(await attempt('not this one')).toEqual({ status: 'wrong' });
});
