import { expect, test } from 'vitest';
import type { Context } from '../../../../src/lib/server/context.ts';
import {
	addGuestLink,
	lakeOfGuestLink,
	listGuestLinks,
	look,
	revokeGuestLink
} from '../../../../src/lib/server/services/access/guest-links.ts';
import { setPassphrase } from '../../../../src/lib/server/services/access/passphrase.ts';
import {
	addHelper,
	join,
	listHelpers,
	nameOfJoinLink,
	removeHelper,
	renewJoinLink
} from '../../../../src/lib/server/services/access/people.ts';
import { asSeenBy } from '../../../../src/lib/server/services/access/rough-place.ts';
import {
	listTokens,
	makeToken,
	revokeToken
} from '../../../../src/lib/server/services/access/tokens.ts';
import { viewerOf } from '../../../../src/lib/server/services/access/viewer.ts';
import { PASSPHRASE, VIEWERS } from '../../../support/access.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';

const STRANGER = { role: 'stranger', way: 'none' };
const secretIn = (path: string) => path.split('/').at(-1) ?? '';

async function locked(): Promise<Context> {
	const ctx = await freshContext();
	await setPassphrase(ctx, PASSPHRASE);
	return ctx;
}

const seen = (ctx: Context, session: string) => viewerOf(ctx, { session, token: null });
const byToken = (ctx: Context, token: string) => viewerOf(ctx, { session: null, token });

async function helper(ctx: Context, joinsOnce = false) {
	const secret = secretIn(await addHelper(ctx, { name: 'Invented Helper', joinsOnce }));
	const [{ id } = { id: '' }] = await listHelpers(ctx);
	return { secret, id };
}

test('a helper comes in by a link, as often as they like, and is out once removed', async () => {
	const ctx = await locked();
	const { secret, id } = await helper(ctx);
	expect(await nameOfJoinLink(ctx, secret)).toBe('Invented Helper');
	const [phone, tablet] = [await join(ctx, secret), await join(ctx, secret)];
	const viewer = { role: 'helper', way: 'session', id, name: 'Invented Helper' };
	expect(await seen(ctx, phone.secret)).toEqual(viewer);
	const token = await makeToken(ctx, id, 'a script');
	expect(await byToken(ctx, token)).toEqual({ ...viewer, way: 'token' });
	expect(await listHelpers(ctx)).toMatchObject([{ hasLink: true, joinedAt: ctx.now() }]);
	await removeHelper(ctx, id);
	expect(await seen(ctx, phone.secret)).toEqual(STRANGER);
	expect(await seen(ctx, tablet.secret)).toEqual(STRANGER);
	expect(await byToken(ctx, token)).toEqual(STRANGER);
	await expect(join(ctx, secret)).rejects.toThrow(/^No link/);
});

test('a link that works once is used up, even by two at the same time', async () => {
	const ctx = await locked();
	const { secret } = await helper(ctx, true);
	const both = await Promise.allSettled([join(ctx, secret), join(ctx, secret)]);
	expect(both.map(({ status }) => status).toSorted()).toEqual(['fulfilled', 'rejected']);
	await expect(nameOfJoinLink(ctx, secret)).rejects.toThrow(/^No link/);
	expect(await listHelpers(ctx)).toMatchObject([{ hasLink: false }]);
});

test('another link takes the place of the one before and signs the helper out', async () => {
	const ctx = await locked();
	const { secret, id } = await helper(ctx);
	const session = await join(ctx, secret);
	const other = secretIn(await renewJoinLink(ctx, id, false));
	expect(await seen(ctx, session.secret)).toEqual(STRANGER);
	await expect(join(ctx, secret)).rejects.toThrow(/^No link/);
	expect(await seen(ctx, (await join(ctx, other)).secret)).toMatchObject({ role: 'helper' });
	await expect(renewJoinLink(ctx, 'nobody', false)).rejects.toThrow(/^No link/);
});

test('a guest sees one lake until the link is revoked', async () => {
	const ctx = await locked();
	const lake = await inventedLake(ctx);
	const wish = { name: 'Invented guest', lake: lake.id, seesPlaces: false };
	const secret = secretIn(await addGuestLink(ctx, wish));
	expect(await lakeOfGuestLink(ctx, secret)).toBe(lake.id);
	const session = await look(ctx, secret);
	const guest = { role: 'guest', way: 'session', lake: lake.id, seesPlaces: false };
	expect(await seen(ctx, session.secret)).toEqual(guest);
	const [{ id, openedAt } = { id: '', openedAt: null }] = await listGuestLinks(ctx);
	expect(openedAt).toEqual(ctx.now());
	await revokeGuestLink(ctx, id);
	expect(await seen(ctx, session.secret)).toEqual(STRANGER);
	await expect(look(ctx, secret)).rejects.toThrow(/^No link/);
	await expect(addGuestLink(ctx, { ...wish, lake: 'nowhere' })).rejects.toThrow('No lake');
});

test('a token of the owner acts as the owner until it is revoked, and only by its owner', async () => {
	const ctx = await locked();
	const { id: person } = await helper(ctx);
	const token = await makeToken(ctx, null, 'a script');
	expect(await byToken(ctx, token)).toEqual({ role: 'owner', way: 'token' });
	const [made] = await listTokens(ctx, null);
	expect(made).toMatchObject({ name: 'a script', usedOn: '2027-02-10' });
	await revokeToken(ctx, person, made?.id ?? '');
	expect(await byToken(ctx, token)).toEqual({ role: 'owner', way: 'token' });
	await revokeToken(ctx, null, made?.id ?? '');
	expect(await byToken(ctx, token)).toEqual(STRANGER);
});

test('whoever sees no exact places is told a position to a tenth of a degree', () => {
	const place = { latitude: 47.4321, longitude: -38.2678, name: 'kept' };
	for (const viewer of [VIEWERS.owner, VIEWERS.helper, VIEWERS.guestWithPlaces])
		expect(asSeenBy(viewer, place)).toEqual(place);
	const rough = { latitude: 47.4, longitude: -38.3, name: 'kept' };
	expect(asSeenBy(VIEWERS.guest, place)).toEqual(rough);
});
