import { sql } from 'kysely';
import { expect, test } from 'vitest';
import type { Context } from '../../../../src/lib/server/context.ts';
import { clearAway } from '../../../../src/lib/server/services/history/clear-away.ts';
import { listHistory, writingAs } from '../../../../src/lib/server/services/history/history.ts';
import { undoDeletion } from '../../../../src/lib/server/services/history/undo.ts';
import { importWeather } from '../../../../src/lib/server/services/import-weather.ts';
import {
	deleteLake,
	listLakes,
	restoreLake,
	updateLake
} from '../../../../src/lib/server/services/lakes.ts';
import { lakeView } from '../../../../src/lib/server/services/lake-view.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import {
	addReadings,
	deleteReading,
	listReadings
} from '../../../../src/lib/server/services/readings.ts';
import { newSource } from '../../../../src/lib/server/services/sources/input.ts';
import {
	createSource,
	deleteSource,
	listSources
} from '../../../../src/lib/server/services/sources/sources.ts';
import { onTellingNudge } from '../../../../src/lib/server/services/telling/nudge.ts';
import {
	deleteSiteWinter,
	getSiteWinter,
	listWinters,
	saveSiteWinter
} from '../../../../src/lib/server/services/winters.ts';
import { NOT_WATCHED, WATCHED } from '../../../../src/lib/server/storage/watch-history.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';
import { inventedSource } from '../../../support/invented-source.ts';
import { winterCsv } from '../../../support/winter-csv.ts';
import { updateReading } from '../../../support/update-reading.ts';

const WINTER = '2026-27';
const RECORD = { freezeUpOn: '2026-12-01', freezeUpBy: null, iceOutOn: null };
const EVENT = { kind: 'cleared' as const, on: '2027-01-05', snow_m: 0.02 };

const as = <Result>(ctx: Context, name: string, work: () => Result): Result =>
	writingAs({ name, at: ctx.now() }, work);
const reading = (more: object = {}) =>
	readingInput.parse({ on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.3 }], ...more });

async function pond() {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx, { name: 'Pond' });
	return { ctx, id };
}

async function logged(ctx: Context, lake: string, name = 'Invented Helper'): Promise<string> {
	const [id = ''] = await as(ctx, name, () => addReadings(ctx, lake, 'main', [reading()]));
	return id;
}

const later = (ctx: Context, days: number): Context => ({
	...ctx,
	now: () => new Date(ctx.now().getTime() + days * 86_400_000)
});

test('every table is on record, or it is said why not', async () => {
	const { ctx } = await pond();
	const { rows } = await sql<{ name: string }>`SELECT name FROM main.sqlite_master
		WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'kysely%'`.execute(ctx.db);
	const decided = [...Object.keys(WATCHED), ...Object.keys(NOT_WATCHED)];
	expect(rows.map(({ name }) => name).toSorted()).toEqual(decided.toSorted());
});

test('no column on record may hold a key', async () => {
	const { ctx } = await pond();
	const lake = await inventedLake(ctx);
	const key = 'k3y-that-nobody-may-see';
	await as(ctx, 'the owner', () =>
		createSource(ctx, newSource.parse({ source: inventedSource({ needsKey: true }), key }))
	);
	const { rows } = await sql<{ what: string }>`SELECT * FROM history`.execute(ctx.db);
	expect(rows.map(({ what }) => what).toSorted()).toEqual(['source', 'source_key']);
	expect(JSON.stringify(rows)).not.toContain(key);
	expect(lake.id).not.toBe('');
});

test('a change has who and when, before and after, and is one with all its rows', async () => {
	const { ctx, id } = await pond();
	const made = await logged(ctx, id);
	const { holes } = reading({ holes: [{ total_m: 0.2 }] });
	await as(ctx, 'the owner', () => updateReading(ctx, id, made, { holes }));
	const { entries, older } = await listHistory(ctx, id);
	expect(older).toBeNull();
	expect(entries).toMatchObject([
		{ who: 'the owner', at: ctx.now(), changes: [{ what: 'hole' }, { what: 'hole' }] },
		{ who: 'Invented Helper', changes: [{ what: 'reading', before: null }, { what: 'hole' }] }
	]);
	const [deleted, inserted] = entries[0]?.changes ?? [];
	expect([deleted?.before?.['total_m'], inserted?.after?.['total_m']]).toEqual([0.3, 0.2]);
});

test('what nobody in person writes, and what is stored again unchanged, is not on record', async () => {
	const { ctx, id } = await pond();
	await addReadings(ctx, id, 'main', [reading()]);
	await as(ctx, 'the owner', () => updateLake(ctx, id, { name: 'Pond' }));
	expect((await listHistory(ctx, id)).entries).toEqual([]);
});

test('what a change sets going is nobody’s', async () => {
	const { ctx, id } = await pond();
	const done = new Promise<void>((resolve, fail) => {
		onTellingNudge(ctx, () => {
			setTimeout(() => addReadings(ctx, id, 'main', [reading()]).then(() => resolve(), fail));
			onTellingNudge(ctx, null);
		});
	});
	await logged(ctx, id);
	await done;
	expect(await listReadings(ctx, id, 'main')).toHaveLength(2);
	expect((await listHistory(ctx, id)).entries).toHaveLength(1);
});

test('what is rolled back leaves nothing on record', async () => {
	const { ctx, id } = await pond();
	const broken = as(ctx, 'the owner', () =>
		ctx.db.transaction().execute(async (tx) => {
			await tx.updateTable('lake').set({ name: 'Other' }).where('id', '=', id).execute();
			throw new Error('cut short');
		})
	);
	await expect(broken).rejects.toThrow('cut short');
	expect((await listHistory(ctx, id)).entries).toEqual([]);
});

test('two at once are each on record under their own name', async () => {
	const { ctx, id } = await pond();
	const names = Array.from({ length: 12 }, (_, n) => `Helper ${n}`);
	await Promise.all(names.map((name) => logged(ctx, id, name)));
	const { entries } = await listHistory(ctx, id);
	expect(entries.map(({ who }) => who).toSorted()).toEqual(names.toSorted());
	for (const { changes } of entries) expect(changes).toHaveLength(2);
});

test('a file of weather is one change', async () => {
	const { ctx, id } = await pond();
	const bytes = [new TextEncoder().encode(winterCsv('2026-12-01', 60))];
	const stream = (async function* () {
		yield* bytes;
	})();
	await as(ctx, 'the owner', () => importWeather(ctx, id, stream));
	const { entries } = await listHistory(ctx, id);
	const after = { days: 60, hours: 0, from: '2026-12-01', to: '2027-01-29' };
	expect(entries).toMatchObject([{ who: 'the owner', changes: [{ what: 'weather', after }] }]);
});

test('what is on record is never changed', async () => {
	const { ctx, id } = await pond();
	await logged(ctx, id);
	const forged = sql`UPDATE history SET who = 'nobody'`.execute(ctx.db);
	await expect(forged).rejects.toThrow('never changed');
});

test('the history comes in pages, each change whole', async () => {
	const { ctx, id } = await pond();
	for (let n = 0; n < 35; n++) await logged(ctx, id, `Helper ${n}`);
	const first = await listHistory(ctx, id);
	expect(first.entries).toHaveLength(30);
	const second = await listHistory(ctx, id, first.older);
	const names = [...first.entries, ...second.entries].map(({ who }) => who);
	expect(names).toEqual(Array.from({ length: 35 }, (_, n) => `Helper ${34 - n}`));
	expect(second.older).toBeNull();
});

test('a deleted reading is brought back from the history, once, and for 30 days', async () => {
	const { ctx, id } = await pond();
	const made = await logged(ctx, id);
	await as(ctx, 'the owner', () => deleteReading(ctx, id, made));
	const undo = { what: 'reading', id: made, site: null };
	expect((await listHistory(ctx, id)).entries[0]?.undo).toEqual(undo);
	expect((await listHistory(later(ctx, 31), id)).entries[0]?.undo).toBeNull();
	await undoDeletion(ctx, id, undo);
	expect(await listReadings(ctx, id, 'main')).toHaveLength(1);
	expect((await listHistory(ctx, id)).entries.map((entry) => entry.undo)).toEqual([null, null]);
	await expect(undoDeletion(ctx, id, undo)).rejects.toThrow('No deletion');
	await expect(undoDeletion(ctx, 'other', undo)).rejects.toThrow('No deletion');
	await expect(undoDeletion(ctx, id, { ...undo, what: 'lake' })).rejects.toThrow('No deletion');
});

test('a deleted winter counts nowhere, and comes back whole', async () => {
	const { ctx, id } = await pond();
	const record = { winter: WINTER, ...RECORD, events: [EVENT] };
	await saveSiteWinter(ctx, id, 'main', record);
	await as(ctx, 'the owner', () => deleteSiteWinter(ctx, id, 'main', WINTER));
	const nothing = {
		winter: WINTER,
		freezeUpOn: null,
		freezeUpBy: null,
		iceOutOn: null,
		events: []
	};
	expect(await getSiteWinter(ctx, id, 'main', WINTER)).toEqual(nothing);
	expect(await listWinters(ctx, id, 'main')).toEqual([]);
	expect((await lakeView(ctx, id, { winter: WINTER })).status).not.toBe('ok');
	await expect(deleteSiteWinter(ctx, id, 'main', WINTER)).rejects.toThrow('No winter');
	const [entry] = (await listHistory(ctx, id)).entries;
	expect(entry?.undo).toEqual({ what: 'winter', id: WINTER, site: 'main' });
	if (entry?.undo) await undoDeletion(ctx, id, entry.undo);
	expect(await getSiteWinter(ctx, id, 'main', WINTER)).toEqual(record);
});

test('a winter that is stored anew has nothing of the deleted one', async () => {
	const { ctx, id } = await pond();
	await saveSiteWinter(ctx, id, 'main', { winter: WINTER, ...RECORD, events: [EVENT] });
	await as(ctx, 'the owner', () => deleteSiteWinter(ctx, id, 'main', WINTER));
	const anew = { winter: WINTER, ...RECORD, freezeUpOn: '2026-12-08', events: [] };
	expect(await saveSiteWinter(ctx, id, 'main', anew)).toEqual(anew);
	expect((await listHistory(ctx, id)).entries[0]?.undo).toBeNull();
});

test('after 30 days what is deleted goes for good, and nothing before', async () => {
	const { ctx, id } = await pond();
	const { id: gone } = await inventedLake(ctx, { name: 'Gone' });
	const source = await createSource(ctx, newSource.parse({ source: inventedSource() }));
	const made = await logged(ctx, id);
	await saveSiteWinter(ctx, id, 'main', { winter: WINTER, ...RECORD, events: [EVENT] });
	await deleteReading(ctx, id, made);
	await deleteSiteWinter(ctx, id, 'main', WINTER);
	await deleteSource(ctx, source.id);
	await deleteLake(ctx, gone);
	const counts = async () => {
		const { rows } = await sql`SELECT (SELECT count(*) FROM lake) AS lakes,
			(SELECT count(*) FROM reading) AS readings, (SELECT count(*) FROM hole) AS holes,
			(SELECT count(*) FROM winter) AS winters, (SELECT count(*) FROM site_event) AS events,
			(SELECT count(*) FROM source) AS sources`.execute(ctx.db);
		return rows[0];
	};
	await clearAway(later(ctx, 29));
	const all = { lakes: 2, readings: 1, holes: 1, winters: 1, events: 1, sources: 1 };
	expect(await counts()).toEqual(all);
	await clearAway(later(ctx, 31));
	const left = { lakes: 1, readings: 0, holes: 0, winters: 0, events: 0, sources: 0 };
	expect(await counts()).toEqual(left);
	expect(await listLakes(ctx)).toMatchObject([{ id }]);
	expect(await listSources(ctx)).toEqual([]);
	await expect(restoreLake(ctx, gone)).rejects.toThrow('No lake');
});
