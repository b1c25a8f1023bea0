import { expect, test } from 'vitest';
import {
	createLake,
	deleteLake,
	newLake,
	restoreLake,
	updateLake
} from '../../../src/lib/server/services/lakes.ts';
import {
	FEED_FILES,
	makeFeed,
	revokeFeed,
	type FeedKind
} from '../../../src/lib/server/services/telling/feeds.ts';
import { lookAt } from '../../../src/lib/server/services/telling/look.ts';
import { getTelling } from '../../../src/lib/server/services/telling/settings.ts';
import { fetchFeed } from '../../support/feed-calls.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { logReading, tellingLake } from '../../support/telling-lake.ts';

const KINDS = Object.keys(FEED_FILES) as FeedKind[];

async function lake() {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	return { ctx, id };
}

test('all is off until somebody switches it on', async () => {
	const { ctx, id } = await lake();
	expect(await getTelling(ctx, id)).toMatchObject({ calendar: null, changes: null, webhook: null });
	expect(await lookAt(ctx, id)).toBe(false);
});

test.each(KINDS)(
	'the address of %s holds 256 random bits, of which a digest is stored',
	async (kind) => {
		const { ctx, id } = await lake();
		const paths = new Set<string>();
		for (let time = 0; time < 20; time++) paths.add(await makeFeed(ctx, id, kind));
		expect(paths.size).toBe(20);
		const last = [...paths].at(-1) ?? '';
		const secret = last.split('/')[2] ?? '';
		expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
		const stored = JSON.stringify(await ctx.db.selectFrom('telling_feed').selectAll().execute());
		expect(stored).not.toContain(secret);
		expect(stored).toMatch(/"[0-9a-f]{64}"/);
	}
);

test.each(KINDS)('%s is not found when revoked, made anew, or of a deleted lake', async (kind) => {
	const { ctx, id } = await lake();
	const statusOf = async (path: string) => (await fetchFeed(ctx, path)).status;
	const first = await makeFeed(ctx, id, kind);
	expect(await statusOf(first)).toBe(200);
	const second = await makeFeed(ctx, id, kind);
	expect([await statusOf(first), await statusOf(second)]).toEqual([404, 200]);
	await deleteLake(ctx, id);
	expect(await statusOf(second)).toBe(404);
	await restoreLake(ctx, id);
	expect(await statusOf(second)).toBe(200);
	await revokeFeed(ctx, id, kind);
	expect(await statusOf(second)).toBe(404);
	expect(await statusOf(`/feeds/nothing/${FEED_FILES[kind]}`)).toBe(404);
	const text = await (await fetchFeed(ctx, second)).text();
	expect(text).toBe('Nothing is told at this address, or not any more.\n');
});

test('the secret of one feed does not open the other', async () => {
	const { ctx, id } = await lake();
	const path = await makeFeed(ctx, id, 'calendar');
	await makeFeed(ctx, id, 'changes');
	const crossed = path.replace(FEED_FILES.calendar, FEED_FILES.changes);
	expect((await fetchFeed(ctx, crossed)).status).toBe(404);
});

test('one that has been asked for says when', async () => {
	const { ctx, id } = await lake();
	await fetchFeed(ctx, await makeFeed(ctx, id, 'calendar'));
	const { calendar } = await getTelling(ctx, id);
	expect(calendar?.fetchedAt?.toISOString()).toBe('2027-02-10T12:00:00.000Z');
});

test.each(KINDS)('%s is sent again only when it has changed', async (kind) => {
	const lake = await tellingLake();
	const path = await makeFeed(lake.ctx, lake.id, kind);
	const first = await fetchFeed(lake.ctx, path);
	const etag = first.headers.get('etag') ?? '';
	const lastModified = first.headers.get('last-modified') ?? '';
	expect(etag).toMatch(/^W\/"[\w-]{27}"$/);
	expect(lastModified).toBe('Fri, 29 Jan 2027 01:00:00 GMT');
	expect(first.headers.get('cache-control')).toContain('private');
	const statusFor = async (headers: Record<string, string>) =>
		(await fetchFeed(lake.ctx, path, headers)).status;
	expect(await statusFor({ 'if-none-match': etag })).toBe(304);
	expect(await statusFor({ 'if-none-match': `"other", ${etag}` })).toBe(304);
	expect(await statusFor({ 'if-none-match': '*' })).toBe(304);
	expect(await statusFor({ 'if-none-match': '"other"', 'if-modified-since': lastModified })).toBe(
		200
	);
	expect(await statusFor({ 'if-modified-since': lastModified })).toBe(304);
	expect(await statusFor({ 'if-modified-since': 'Thu, 28 Jan 2027 01:00:00 GMT' })).toBe(200);
	expect(await statusFor({ 'if-modified-since': 'yesterday' })).toBe(200);

	lake.setNow('2027-01-29T05:00:00Z');
	await lookAt(lake.ctx, lake.id);
	expect(await statusFor({ 'if-none-match': etag })).toBe(304);
	expect(await statusFor({ 'if-modified-since': lastModified })).toBe(304);

	await logReading(lake);
	await lookAt(lake.ctx, lake.id);
	expect(await statusFor({ 'if-none-match': etag })).toBe(200);
	expect(await statusFor({ 'if-modified-since': lastModified })).toBe(200);
});

test('a lake that is renamed has changed', async () => {
	const { ctx, id } = await lake();
	const path = await makeFeed(ctx, id, 'calendar');
	const etag = (await fetchFeed(ctx, path)).headers.get('etag') ?? '';
	await updateLake(ctx, id, { name: 'Other Lake' });
	expect((await fetchFeed(ctx, path, { 'if-none-match': etag })).status).toBe(200);
});

test('a lake that is invented says so where nobody sees the app around it', async () => {
	const ctx = await freshContext();
	const facts = { name: 'Made-up Lake', latitude: 47.4, longitude: -38.2, water: 'lake' };
	const { id } = await createLake(ctx, newLake.parse(facts), { today: '2027-01-28' });
	for (const kind of KINDS) {
		const text = await (await fetchFeed(ctx, await makeFeed(ctx, id, kind))).text();
		expect(text).toContain('Made-up Lake (invented): ');
	}
});
