import { generateKeyPairSync, sign } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { describe, expect, onTestFinished, test } from 'vitest';
import { closeContext, openContext, type Context } from '../../../../src/lib/server/context.ts';
import { importWeather } from '../../../../src/lib/server/services/import-weather.ts';
import { lakeView } from '../../../../src/lib/server/services/lake-view.ts';
import { listLakes, updateLake } from '../../../../src/lib/server/services/lakes.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import { whyNotReady } from '../../../../src/lib/server/services/readiness.ts';
import { addReadings, listReadings } from '../../../../src/lib/server/services/readings.ts';
import { troubleOf } from '../../../../src/lib/server/services/storage-trouble.ts';
import { saveSiteWinter, winterInput } from '../../../../src/lib/server/services/winters.ts';
import { readLakeStamp } from '../../../../src/lib/server/storage/lake-changes.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';
import {
	hasLibsqlServer,
	libsqlServer,
	type LibsqlServer
} from '../../../support/libsql-server.ts';
import { inPieces, winterCsv } from '../../../support/winter-csv.ts';

const NOW = '2027-02-10T12:00:00Z';

async function started(words: string[] = []): Promise<LibsqlServer> {
	const server = await libsqlServer(words);
	onTestFinished(() => server.remove());
	return server;
}

async function open({ url }: LibsqlServer, token?: string): Promise<Context> {
	const ctx = await openContext({
		FROSTLEDGER_DATABASE: url,
		FROSTLEDGER_DATABASE_TOKEN: token
	});
	onTestFinished(() => closeContext(ctx));
	return { ...ctx, now: () => new Date(NOW) };
}

const reading = (total_m = 0.3) =>
	readingInput.parse({ on: '2027-01-10', kind: 'measured', holes: [{ total_m, snow_m: 0.05 }] });

/** A lake with a winter's weather, imported twice so that rows meet rows, and a reading. */
async function lakeOf(ctx: Context): Promise<string> {
	const { id } = await inventedLake(ctx);
	await importWeather(ctx, id, inPieces(winterCsv('2026-10-01', 130)));
	const again = await importWeather(ctx, id, inPieces(winterCsv('2026-11-01', 60)));
	expect(again).toMatchObject({ status: 'stored', replaced: 60 });
	const record = winterInput.parse({ freezeUpOn: '2026-11-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	await addReadings(ctx, id, 'main', [reading()]);
	return id;
}

describe.runIf(hasLibsqlServer)('on a libSQL server', () => {
	test('a lake is told the same as in a file', async () => {
		const [ctx, local] = [await open(await started()), await freshContext(NOW)];
		const [there, here] = [await lakeOf(ctx), await lakeOf(local)];
		const [one, other] = [await lakeView(ctx, there), await lakeView(local, here)];
		expect(one.status).toBe('ok');
		expect(one.outlook?.forecast.days).toEqual(other.outlook?.forecast.days);
		expect(await whyNotReady(ctx)).toBeNull();
		const left = await sql`SELECT * FROM staged_day`.execute(ctx.db);
		expect(left.rows).toEqual([]);
		const { rows } = await sql`PRAGMA foreign_key_check`.execute(ctx.db);
		expect(rows).toEqual([]);
	});

	test('opened again it has what was stored, and another process sees changes at once', async () => {
		const server = await started();
		const [one, other] = [await open(server), await open(server)];
		const id = await lakeOf(one);
		const stamp = await readLakeStamp(other.db, id);
		expect(await readLakeStamp(other.db, id)).toBe(stamp);
		await updateLake(one, id, { name: 'Renamed' });
		expect(await readLakeStamp(other.db, id)).not.toBe(stamp);
		expect((await listLakes(other)).map(({ name }) => name)).toEqual(['Renamed']);
		expect(await listReadings(await open(server), id, 'main')).toHaveLength(1);
	});

	test('transactions of two processes come one after the other', async () => {
		const server = await started();
		const contexts = [await open(server), await open(server)];
		const [{ id } = { id: '' }] = [await inventedLake(contexts[0] as Context)];
		const rename = async (ctx: Context) =>
			ctx.db.transaction().execute(async (tx) => {
				const { name } = await tx.selectFrom('lake').select('name').executeTakeFirstOrThrow();
				await tx
					.updateTable('lake')
					.set({ name: `${name}.` })
					.where('id', '=', id)
					.execute();
			});
		await Promise.all(Array.from({ length: 30 }, (_, at) => rename(contexts[at % 2] as Context)));
		const [lake] = await listLakes(contexts[0] as Context);
		expect(lake?.name.split('.')).toHaveLength(31);
	});

	test('what is refused leaves nothing of its transaction', async () => {
		const ctx = await open(await started());
		const id = await lakeOf(ctx);
		const broken = ctx.db.transaction().execute(async (tx) => {
			await tx.deleteFrom('reading').execute();
			await sql`INSERT INTO lake SELECT * FROM lake`.execute(tx);
		});
		await expect(broken).rejects.toThrow(/UNIQUE/);
		expect(await listReadings(ctx, id, 'main')).toHaveLength(1);
		await updateLake(ctx, id, { name: 'Goes on' });
	});

	test('while the server is away that is said, and when it is back all that was answered is there', async () => {
		const server = await started();
		const ctx = await open(server);
		const id = await lakeOf(ctx);
		const cut = ctx.db.transaction().execute(async (tx) => {
			await tx.deleteFrom('reading').execute();
			await server.kill();
			await tx.deleteFrom('site').execute();
		});
		expect(troubleOf(await cut.catch((cause: unknown) => cause))).toMatch(
			/server that holds the database does not answer/
		);
		const failed = await addReadings(ctx, id, 'main', [reading()]).catch((cause: unknown) => cause);
		expect(troubleOf(failed)).toMatch(/does not answer.*try again/);
		expect(await whyNotReady(ctx)).toMatch(/does not answer/);
		await server.start();
		expect(await listReadings(ctx, id, 'main')).toHaveLength(1);
		await addReadings(ctx, id, 'main', [reading(0.31)]);
		expect(await listReadings(ctx, id, 'main')).toHaveLength(2);
	});

	test('a server that is not there, or wants a token, is told in a sentence', async () => {
		const gone = openContext({ FROSTLEDGER_DATABASE: 'http://127.0.0.1:9' });
		await expect(gone).rejects.toThrow(/on 127\.0\.0\.1:9 could not be opened.*does not answer/);
		const { keyFile, token } = keys();
		const server = await started(['--auth-jwt-key-file', keyFile]);
		await expect(open(server)).rejects.toThrow(/FROSTLEDGER_DATABASE_TOKEN is missing, wrong/);
		await expect(open(server, token.replace(/.{9}$/, 'AAAAAAAAA'))).rejects.toThrow(/wrong/);
		const ctx = await open(server, token);
		expect(await listLakes(ctx)).toEqual([]);
	});
});

/** A key that a server believes, and a token that was signed with it. */
function keys() {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-jwt-'));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	const { publicKey, privateKey } = generateKeyPairSync('ed25519');
	const keyFile = join(folder, 'key.pem');
	writeFileSync(keyFile, publicKey.export({ type: 'spki', format: 'pem' }));
	const part = (content: object) => Buffer.from(JSON.stringify(content)).toString('base64url');
	const signed = `${part({ alg: 'EdDSA', typ: 'JWT' })}.${part({ a: 'rw' })}`;
	const token = `${signed}.${sign(null, Buffer.from(signed), privateKey).toString('base64url')}`;
	return { keyFile, token };
}
