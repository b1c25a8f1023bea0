import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { troubleOf } from '../../../src/lib/server/services/storage-trouble.ts';
import { insertLake, listLakeRows, type LakeRow } from '../../../src/lib/server/storage/lakes.ts';
import { storageTrouble } from '../../../src/lib/server/storage/trouble.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

function failed(code: string, more: object = {}): Error {
	return Object.assign(new Error('it failed'), { code, ...more });
}

test.each([
	['SQLITE_FULL', 'full'],
	['ENOSPC', 'full'],
	['SQLITE_READONLY_DBMOVED', 'readOnly'],
	['EROFS', 'readOnly'],
	['SQLITE_BUSY', 'locked'],
	['SQLITE_CORRUPT_VTAB', 'damaged'],
	['SQLITE_IOERR_FSYNC', 'unreachable'],
	['SQLITE_CANTOPEN', 'unreachable'],
	['SQLITE_CONSTRAINT', null],
	['', null]
])('%s is known for what it is', (code, trouble) => {
	expect(storageTrouble(failed(code))).toBe(trouble);
	expect(storageTrouble(new Error('outer', { cause: failed(code) }))).toBe(trouble);
});

test('a network that may not be used is no trouble of the disk', () => {
	expect(storageTrouble(failed('EACCES', { syscall: 'open' }))).toBe('readOnly');
	expect(storageTrouble(failed('EACCES', { syscall: 'connect' }))).toBe(null);
	expect(storageTrouble('EACCES')).toBe(null);
});

test('a transaction that finds the disk full says so, leaves nothing, and goes when there is room', async () => {
	const ctx = await freshContext();
	const lake = await inventedLake(ctx);
	const [row] = await listLakeRows(ctx.db);
	const other: LakeRow = { ...(row as LakeRow), id: 'other', name: 'N'.repeat(120) };
	const { rows } = await sql<{ page_count: number }>`PRAGMA page_count`.execute(ctx.db);
	await sql.raw(`PRAGMA max_page_count = ${rows[0]?.page_count}`).execute(ctx.db);
	const filling = ctx.db.transaction().execute(async (tx) => {
		for (let n = 0; n < 1000; n++) {
			await tx
				.insertInto('lake')
				.values({ ...other, id: `other-${n}` })
				.execute();
		}
	});
	const failure = await filling.catch((cause: unknown) => cause);
	expect(troubleOf(failure)).toMatch(/^The disk .* is full.*Make room/);
	expect((await listLakeRows(ctx.db)).map(({ id }) => id)).toEqual([lake.id]);
	await sql`PRAGMA max_page_count = 1000000`.execute(ctx.db);
	await insertLake(ctx.db, other);
	expect(await listLakeRows(ctx.db)).toHaveLength(2);
});
