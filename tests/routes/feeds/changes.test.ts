import { XMLValidator } from 'fast-xml-parser';
import { parseAtomFeed } from 'feedsmith';
import { expect, test } from 'vitest';
import type { Context } from '../../../src/lib/server/context.ts';
import { deleteReading } from '../../../src/lib/server/services/readings.ts';
import { makeFeed } from '../../../src/lib/server/services/telling/feeds.ts';
import { lookAt } from '../../../src/lib/server/services/telling/look.ts';
import { updateTellingOf } from '../../../src/lib/server/services/telling/settings.ts';
import { fetchFeed } from '../../support/feed-calls.ts';
import { permissionsIn } from '../../support/permission-words.ts';
import { logReading, tellingLake } from '../../support/telling-lake.ts';
import { updateReading } from '../../support/update-reading.ts';

async function read(ctx: Context, path: string) {
	const response = await fetchFeed(ctx, path);
	expect(response.status).toBe(200);
	const text = await response.text();
	expect(XMLValidator.validate(text)).toBe(true);
	return { response, text, feed: parseAtomFeed(text) };
}

const titled = ({ title }: { title?: { value?: string } | undefined } = {}) => title?.value ?? '';

const UUID = /^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-[48][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/** Of RFC 4287, 4.1.1 and 4.1.2, what a feed and an entry must have. */
test('the feed has what RFC 4287 asks for', async () => {
	const lake = await tellingLake();
	await updateTellingOf(lake.ctx, lake.id, { loads: ['car', 'heavy-truck'] });
	const path = await makeFeed(lake.ctx, lake.id, 'changes');
	await lookAt(lake.ctx, lake.id);
	await logReading(lake, { place: 'north bay' });
	await lookAt(lake.ctx, lake.id);
	const { response, feed } = await read(lake.ctx, path);
	expect(response.headers.get('content-type')).toBe('application/atom+xml; charset=utf-8');
	expect(feed.id).toMatch(UUID);
	expect(feed.title?.value).toBe('Test Lake: changes of the ice');
	expect(feed.updated).toBe('2027-01-29T01:00:00.000Z');
	expect(feed.authors).toEqual([{ name: 'Frostledger' }]);
	const self = feed.links?.find(({ rel }) => rel === 'self');
	expect(self?.href).toBe(`http://lake.test:3000${path}`);
	const entries = feed.entries ?? [];
	expect(entries.length).toBeGreaterThan(1);
	for (const entry of entries) {
		expect(entry.id).toMatch(UUID);
		expect(titled(entry)).toMatch(/^Test Lake: .*: a drilled hole decides$/);
		expect(Date.parse(entry.updated ?? '')).toBeGreaterThan(0);
		expect(entry.content?.value).toMatch(/A drilled hole decides\.$/);
		expect(permissionsIn(JSON.stringify(entry))).toEqual([]);
	}
	expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length);
	const kinds = entries.map(({ categories }) => categories?.[0]?.term);
	expect(kinds).toContain('readingLogged');
	expect(kinds).toContain('thresholdExpected');
});

async function readingLake() {
	const lake = await tellingLake();
	await updateTellingOf(lake.ctx, lake.id, { loads: [] });
	const path = await makeFeed(lake.ctx, lake.id, 'changes');
	await lookAt(lake.ctx, lake.id);
	const entries = async () => (await read(lake.ctx, path)).feed.entries ?? [];
	const look = async (at: string) => {
		lake.setNow(at);
		await lookAt(lake.ctx, lake.id);
	};
	return { lake, entries, look };
}

test('a reading is told once, put right when it is put right, and taken out when it is deleted', async () => {
	const { lake, entries, look } = await readingLake();
	const id = await logReading(lake);
	await look('2027-01-29T02:00:00Z');
	await look('2027-01-29T06:00:00Z');
	const [first, ...rest] = await entries();
	expect(rest).toEqual([]);
	expect(titled(first)).toContain('30 cm');
	const holes = [
		{ total_m: 0.2, clear_m: null, white_m: null, snow_m: null, slush_m: null, freeboard_m: null }
	];
	await updateReading(lake.ctx, lake.id, id, { holes });
	await look('2027-01-29T07:00:00Z');
	const [mended] = await entries();
	expect(mended).toMatchObject({
		id: first?.id,
		published: '2027-01-29T02:00:00.000Z',
		updated: '2027-01-29T07:00:00.000Z'
	});
	expect(titled(mended)).toContain('20 cm');
	await deleteReading(lake.ctx, lake.id, id);
	await look('2027-01-29T08:00:00Z');
	expect(await entries()).toEqual([]);
});

test('a reading that was told and is moved to a day long past is told of that day', async () => {
	const { lake, entries, look } = await readingLake();
	const id = await logReading(lake);
	await look('2027-01-29T02:00:00Z');
	await updateReading(lake.ctx, lake.id, id, { on: '2026-12-28' });
	await look('2027-01-29T03:00:00Z');
	const told = (await entries()).map(titled).join(' ');
	expect(told).toContain('Reading of 28 Dec, 30 cm');
	expect(told).not.toContain('Reading of 28 Jan');
});

test('that somebody went through is told with the place', async () => {
	const { lake, entries, look } = await readingLake();
	await logReading(lake, { kind: 'wentThrough', holes: [], place: 'the narrows' });
	await look('2027-01-29T02:00:00Z');
	const [entry] = await entries();
	expect(entry?.categories?.[0]?.term).toBe('wentThrough');
	expect(titled(entry)).toContain('The ice broke at the narrows on 28 Jan');
});

test('who measured, and remarks, stay at home', async () => {
	const { lake, entries, look } = await readingLake();
	await logReading(lake, { by: 'Invented Name', remark: 'Invented remark' });
	await look('2027-01-29T02:00:00Z');
	expect(JSON.stringify(await entries())).not.toMatch(/Invented/);
});

test('old readings that are brought in are no news', async () => {
	const { lake, entries, look } = await readingLake();
	await logReading(lake, { on: '2027-01-10' });
	await logReading(lake, { on: '2026-01-28' });
	await look('2027-01-29T02:00:00Z');
	const kinds = (await entries()).map(({ categories }) => categories?.[0]?.term);
	expect(kinds).toEqual(['readingOverdue']);
});

test('hostile places and names stay text', async () => {
	const { lake, entries, look } = await readingLake();
	const place = '</title></entry></feed><script>alert(1)</script>&amp;\u0000';
	await logReading(lake, { place });
	await look('2027-01-29T02:00:00Z');
	const [entry, ...rest] = await entries();
	expect(rest).toEqual([]);
	expect(titled(entry)).toContain('</title></entry></feed><script>alert(1)</script>&amp;');
});
