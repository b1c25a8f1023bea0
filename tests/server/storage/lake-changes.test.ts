import { sql } from 'kysely';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { closeContext, openContext } from '../../../src/lib/server/context.ts';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { deleteLake, restoreLake, updateLake } from '../../../src/lib/server/services/lakes.ts';
import { loadInput } from '../../../src/lib/server/services/load-input.ts';
import { addLoad } from '../../../src/lib/server/services/own-loads.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings, deleteReading } from '../../../src/lib/server/services/readings.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { readLakeStamp } from '../../../src/lib/server/storage/lake-changes.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';
import { updateReading } from '../../support/update-reading.ts';

async function twoLakes() {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx, { name: 'North Test Lake' });
	const other = await inventedLake(ctx, { name: 'South Test Lake' });
	const stamps = async () => [
		await readLakeStamp(ctx.db, id),
		await readLakeStamp(ctx.db, other.id)
	];
	return { ctx, id, stamps };
}

type Lake = Awaited<ReturnType<typeof twoLakes>>;

const reading = readingInput.parse({
	on: '2026-12-20',
	kind: 'measured',
	holes: [{ total_m: 0.2 }, { total_m: 0.22 }]
});
const winter = { winter: '2026-27', ...winterInput.parse({ freezeUpOn: '2026-11-20' }) };

const WRITES: Record<string, (lake: Lake) => Promise<unknown>> = {
	'a name': ({ ctx, id }) => updateLake(ctx, id, { name: 'Renamed' }),
	weather: ({ ctx, id }) => importWeather(ctx, id, inPieces(winterCsv('2026-11-01', 30))),
	'a freeze-up': ({ ctx, id }) => saveSiteWinter(ctx, id, 'main', winter),
	'a reading': ({ ctx, id }) => addReadings(ctx, id, 'main', [reading]),
	'a load': ({ ctx, id }) =>
		addLoad(ctx, id, loadInput.parse({ name: 'Sled', mass_kg: 200, use: null })),
	'a deletion': ({ ctx, id }) => deleteLake(ctx, id)
};

test.each(Object.entries(WRITES))(
	'%s changes the stamp of its lake, and of no other',
	async (_, write) => {
		const lake = await twoLakes();
		const [before, otherBefore] = await lake.stamps();
		expect(await lake.stamps()).toEqual([before, otherBefore]);
		await write(lake);
		const [after, otherAfter] = await lake.stamps();
		expect(after).not.toBe(before);
		expect(otherAfter).toBe(otherBefore);
	}
);

test('a change, a change back and an undo are each a change', async () => {
	const { ctx, id, stamps } = await twoLakes();
	const [first = ''] = (await addReadings(ctx, id, 'main', [reading])) as string[];
	const seen = [(await stamps())[0]];
	const see = async (work: Promise<unknown>) => {
		await work;
		seen.push((await stamps())[0]);
	};
	await see(updateReading(ctx, id, first, { holes: [{ total_m: 0.1 }] } as never));
	await see(updateReading(ctx, id, first, { holes: [{ total_m: 0.2 }] } as never));
	await see(deleteReading(ctx, id, first));
	await see(deleteLake(ctx, id));
	await see(restoreLake(ctx, id));
	expect(new Set(seen).size).toBe(seen.length);
});

test('what names no lake changes the stamp of all', async () => {
	const { ctx, stamps } = await twoLakes();
	const [before, otherBefore] = await stamps();
	await sql`INSERT INTO source (id, name, config, is_on, created_at)
		VALUES ('invented', 'Invented', '{}', 1, '2026-12-01T00:00:00Z')`.execute(ctx.db);
	const [after, otherAfter] = await stamps();
	expect(after).not.toBe(before);
	expect(otherAfter).not.toBe(otherBefore);
});

test('an upsert that meets its row is a change, and goes through', async () => {
	const { ctx, id, stamps } = await twoLakes();
	const mark = () =>
		sql`INSERT INTO rejoin (lake_id, from_day, to_day, serial) VALUES (${id}, '2026-12-01', '2026-12-01', 1)
			ON CONFLICT (lake_id) DO UPDATE SET serial = serial + 1`.execute(ctx.db);
	await mark();
	const [before] = await stamps();
	await mark();
	expect((await stamps())[0]).not.toBe(before);
});

test('what another connection writes is a change too', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-changes-'));
	const one = await openContext({ FROSTLEDGER_DATA: folder });
	const two = await openContext({ FROSTLEDGER_DATA: folder });
	onTestFinished(async () => {
		await Promise.all([closeContext(one), closeContext(two)]);
		rmSync(folder, { recursive: true, force: true });
	});
	const { id } = await inventedLake(one);
	const before = await readLakeStamp(one.db, id);
	await updateLake(two, id, { name: 'Renamed elsewhere' });
	expect(await readLakeStamp(one.db, id)).not.toBe(before);
});

test('every table is either watched or left out by name', async () => {
	const { ctx } = await twoLakes();
	const names = async (query: ReturnType<typeof sql<{ name: string }>>) =>
		(await query.execute(ctx.db)).rows.map(({ name }) => name);
	const tables = await names(
		sql`SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'kysely%'`
	);
	const watched = await names(
		sql`SELECT tbl_name AS name FROM sqlite_master WHERE type = 'trigger' AND name LIKE 'noted %' GROUP BY tbl_name HAVING count(*) = 3`
	);
	expect(tables.filter((name) => !watched.includes(name)).toSorted()).toEqual([
		'api_token',
		'fetch_log',
		'forecast_day',
		'forecast_hour',
		'guest_link',
		'history',
		'joined_day',
		'known_device',
		'lake_change',
		'lease',
		'passphrase',
		'person',
		'refresh_wish',
		'session',
		'source_day',
		'source_hour',
		'source_state',
		'telling',
		'telling_date',
		'telling_feed',
		'telling_message',
		'weather_day',
		'weather_hour',
		'webhook',
		'webhook_outbox',
		'writer'
	]);
});
