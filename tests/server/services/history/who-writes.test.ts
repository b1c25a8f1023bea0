import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { describe, expect, onTestFinished, test } from 'vitest';
import { closeContext, openContext, type Context } from '../../../../src/lib/server/context.ts';
import { listHistory, writingAs } from '../../../../src/lib/server/services/history/history.ts';
import { undoDeletion } from '../../../../src/lib/server/services/history/undo.ts';
import { importWeather } from '../../../../src/lib/server/services/import-weather.ts';
import { updateLake } from '../../../../src/lib/server/services/lakes.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import {
	addReadings,
	deleteReading,
	listReadings
} from '../../../../src/lib/server/services/readings.ts';
import { insertWholeLakes } from '../../../../src/lib/server/storage/whole-lake.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import { hasLibsqlServer, libsqlServer } from '../../../support/libsql-server.ts';
import { inPieces, winterCsv } from '../../../support/winter-csv.ts';

const reading = readingInput.parse({
	on: '2027-01-10',
	kind: 'measured',
	holes: [{ total_m: 0.3 }]
});

const as = <Result>(ctx: Context, name: string, work: () => Result): Result =>
	writingAs({ name, at: ctx.now() }, work);

/** Two processes' views of one database, with a lake that nobody in person has made. */
async function pair(isOnServer: boolean): Promise<{ one: Context; two: Context; id: string }> {
	const environment = isOnServer ? await onServer() : inFile();
	const contexts = [];
	for (let count = 0; count < 2; count++) {
		const ctx = await openContext(environment);
		onTestFinished(() => closeContext(ctx));
		contexts.push({ ...ctx, now: () => new Date('2027-02-10T12:00:00Z') });
	}
	const [one, two] = contexts as [Context, Context];
	const { id } = await inventedLake(one);
	return { one, two, id };
}

async function onServer() {
	const server = await libsqlServer();
	onTestFinished(() => server.remove());
	return { FROSTLEDGER_DATABASE: server.url };
}

function inFile() {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-writers-'));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	return { FROSTLEDGER_DATA: folder };
}

async function count(ctx: Context, table: string): Promise<number> {
	const { rows } = await sql<{ n: number }>`SELECT count(*) AS n FROM ${sql.table(table)}`.execute(
		ctx.db
	);
	return rows[0]?.n ?? -1;
}

describe.each([
	['in a file', false],
	['on a libSQL server', true]
])('%s', (_, isOnServer) => {
	if (isOnServer && !hasLibsqlServer) return test.skip('no libSQL server for this machine');

	test('processes side by side put each change on record under the name of who wrote it', async () => {
		const { one, two, id } = await pair(isOnServer);
		const made = [one, two, one, two, one, two].map(async (ctx, turn) => {
			const name = `Helper ${turn}`;
			const [added = ''] = await as(ctx, name, () => addReadings(ctx, id, 'main', [reading]));
			return [added, name];
		});
		const nobodys = [one, two].map((ctx) => addReadings(ctx, id, 'main', [reading]));
		const names = new Map((await Promise.all(made)).map(([added, name]) => [added, name]));
		await Promise.all(nobodys);
		const { entries } = await listHistory(one, id);
		expect(entries).toHaveLength(6);
		for (const { who, changes } of entries) {
			expect(changes.map(({ what }) => what)).toEqual(['reading', 'hole']);
			expect(names.get(String(changes[0]?.key['id']))).toBe(who);
		}
		expect(await listReadings(two, id, 'main')).toHaveLength(8);
		expect(await count(one, 'writer')).toBe(0);
	});

	test('a single statement is on record as well, and what is refused leaves nothing', async () => {
		const { one, two, id } = await pair(isOnServer);
		const alone = (water: string) =>
			as(one, 'the owner', () =>
				sql`UPDATE lake SET water = ${water} WHERE id = ${id}`.execute(one.db)
			);
		await alone('river');
		await expect(alone('sand')).rejects.toThrow('CHECK constraint failed');
		const broken = as(one, 'the owner', () =>
			one.db.transaction().execute(async (tx) => {
				await tx.updateTable('lake').set({ name: 'Other' }).where('id', '=', id).execute();
				throw new Error('cut short');
			})
		);
		await expect(broken).rejects.toThrow('cut short');
		await updateLake(two, id, { name: 'By nobody' });
		const { entries } = await listHistory(two, id);
		expect(entries).toMatchObject([{ who: 'the owner', changes: [{ after: { water: 'river' } }] }]);
		expect(entries).toHaveLength(1);
		expect(await count(two, 'writer')).toBe(0);
	});

	test('a deletion is taken back, a file and a whole lake are one change each', async () => {
		const { one, id } = await pair(isOnServer);
		const [added = ''] = await addReadings(one, id, 'main', [reading]);
		await as(one, 'A', () => deleteReading(one, id, added));
		const [deleted] = (await listHistory(one, id)).entries;
		expect(deleted?.undo).toEqual({ what: 'reading', id: added, site: null });
		if (deleted?.undo) await undoDeletion(one, id, deleted.undo);
		expect(await listReadings(one, id, 'main')).toHaveLength(1);
		await as(one, 'B', () => importWeather(one, id, inPieces(winterCsv('2026-12-01', 60))));
		expect((await listHistory(one, id)).entries[0]).toMatchObject({
			who: 'B',
			changes: [{ what: 'weather', after: { days: 60 } }]
		});
		const lake = await one.db.selectFrom('lake').selectAll().executeTakeFirstOrThrow();
		const whole = { lake: { ...lake, id: 'whole' }, days: [] };
		const sites = [{ site: { id: 'main', name: 'Main' }, winters: [], readings: [] }];
		await as(one, 'C', () => insertWholeLakes(one.db, [{ ...whole, sites }], one.now()));
		expect((await listHistory(one, 'whole')).entries).toMatchObject([
			{ who: 'C', changes: [{ what: 'winters', after: { winters: 0, readings: 0 } }] }
		]);
		expect(await count(one, 'writer')).toBe(0);
	});
});

test('two people whose changes have one number are told apart', async () => {
	const { one, id } = await pair(false);
	for (const who of ['A', 'B']) {
		await sql`INSERT INTO history (unit, lake_id, at, who, what, key, after)
			VALUES (7, ${id}, '2027-01-01T00:00:00.000Z', ${who}, 'weather', '{}', '{}')`.execute(one.db);
	}
	const { entries } = await listHistory(one, id);
	expect(entries.map(({ who, changes }) => [who, changes.length])).toEqual([
		['A', 1],
		['B', 1]
	]);
});

test('a database that is opened again keeps its triggers as they are', async () => {
	const { one, two } = await pair(false);
	const version = async () => {
		const { rows } = await sql<{ schema_version: number }>`PRAGMA schema_version`.execute(one.db);
		return rows[0]?.schema_version;
	};
	const before = await version();
	const third = await openContext({ FROSTLEDGER_DATA: two.place?.folder });
	await closeContext(third);
	expect(await version()).toBe(before);
});
