import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteFile from 'libsql';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ensureBuilt } from '../../src/commands/start/build.ts';
import { addDays, winterOf } from '../../src/lib/model/calendar.ts';
import { countingService, type CountingService } from '../support/counting-service.ts';
import { hasLibsqlServer, libsqlServer, type LibsqlServer } from '../support/libsql-server.ts';
import { askTwin, startTwin, type TwinApp } from '../support/twin-apps.ts';
import { startReceiver, type Receiver } from '../support/webhook-receiver.ts';
import { winterCsv } from '../support/winter-csv.ts';

/** A lease, a try for it, and a round after it. */
const TAKEN_OVER_MS = 30_000 + 5_000 + 10_000;
const SOON_MS = 60_000;

/** Once for a file that both have open, and once for a server that both ask. */
describe.each([
	['one file', false],
	['a libSQL server', true]
])('two processes on %s', (_, isOnServer) => {
	if (isOnServer && !hasLibsqlServer) return test.skip('no libSQL server for this machine');
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-twins-'));
	const today = new Date().toISOString().slice(0, 10);
	let server: LibsqlServer | null = null;
	let service: CountingService;
	let receiver: Receiver;
	let apps: TwinApp[] = [];

	/** Started at the same moment on an empty database. */
	beforeAll(async () => {
		await ensureBuilt({ quiet: true });
		if (isOnServer) server = await libsqlServer();
		[service, receiver] = await Promise.all([countingService(), startReceiver()]);
		apps = await Promise.all([start(), start()]);
	});
	afterAll(async () => {
		await Promise.all(apps.map((app) => app.kill()));
		await Promise.all([service?.stop(), receiver?.stop(), server?.remove()]);
		rmSync(folder, { recursive: true, force: true });
	});

	function start(): Promise<TwinApp> {
		return startTwin({
			FROSTLEDGER_DATA: folder,
			...(server ? { FROSTLEDGER_DATABASE: server.url } : {}),
			FROSTLEDGER_SOURCE_HOSTS: '127.0.0.1',
			FROSTLEDGER_WEBHOOK_HOSTS: '127.0.0.1'
		});
	}

	/** The process that does a work for both, and the other. */
	async function doerOf(work: string): Promise<[doer: TwinApp, other: TwinApp]> {
		const doers = () => apps.filter(({ does }) => does.has(work));
		await expect.poll(() => doers().length, { timeout: TAKEN_OVER_MS }).toBe(1);
		const [doer] = doers();
		const other = apps.find((app) => app !== doer);
		if (!doer || !other) throw new Error('there are not two');
		return [doer, other];
	}

	async function newLake(app: TwinApp, latitude: number): Promise<string> {
		const place = { latitude, longitude: -38.2, timeZone: 'Etc/UTC' };
		const facts = { name: `Twin ${latitude}`, water: 'lake', ...place };
		const { id } = await askTwin<{ id: string }>(app, 'POST', '/lakes', facts);
		const freezeUpOn = addDays(today, -40);
		await askTwin(app, 'PUT', `/lakes/${id}/winters/${winterOf(freezeUpOn)}`, { freezeUpOn });
		return id;
	}

	const reading = (place: string, kind = 'measured') => ({
		on: today,
		place,
		kind,
		holes: kind === 'wentThrough' ? [] : [{ total_m: 0.3 }]
	});

	async function page({ url }: TwinApp, path: string): Promise<string> {
		const response = await fetch(new URL(path, url));
		expect(response.status).toBe(200);
		return response.text();
	}

	test('started at the same moment on an empty database, both run, with one invented lake', async () => {
		for (const app of apps) {
			await expect
				.poll(async () => (await askTwin<unknown[]>(app, 'GET', '/lakes')).length)
				.toBe(1);
		}
	});

	test('what is stored by one is on the kept pages of the other at once', async () => {
		const [one, two] = apps as [TwinApp, TwinApp];
		const id = await newLake(one, 46);
		await askTwin(one, 'POST', `/lakes/${id}/weather`, winterCsv(addDays(today, -60), 60));
		const path = `/lakes/${id}`;
		let seen = await page(two, path);
		for (const [turn, writer] of [one, two, one, two].entries()) {
			const reader = writer === one ? two : one;
			const thickness_m = 0.31 + turn / 100;
			await page(reader, path);
			const body = { ...reading('the bay'), holes: [{ total_m: thickness_m }] };
			await askTwin(writer, 'POST', `/lakes/${id}/readings`, body);
			const now = await page(reader, path);
			expect(now).not.toBe(seen);
			expect(await page(reader, `${path}/readings`)).toContain(`${31 + turn}`);
			seen = now;
		}
	});

	test('both may write at once: all that is answered is stored, nothing fails', async () => {
		const [one, two] = apps as [TwinApp, TwinApp];
		const id = await newLake(one, 45);
		await Promise.all(
			[one, two].flatMap((app) => [
				...Array.from({ length: 40 }, (_, index) =>
					askTwin(app, 'POST', `/lakes/${id}/readings`, reading(`${app.url} ${index}`))
				),
				...[0, 1, 2].map((file) =>
					askTwin(
						app,
						'POST',
						`/lakes/${id}/weather`,
						winterCsv(addDays(today, -900 + 200 * file), 190)
					)
				)
			])
		);
		const stored = await askTwin<{ place: string }[]>(two, 'GET', `/lakes/${id}/readings`);
		expect(new Set(stored.map(({ place }) => place)).size).toBe(80);
	});

	test('a source is asked once for each lake that is due, and once for a wish to either process', async () => {
		const [doer, other] = await doerOf('refreshing');
		const latitudes = [47.1, 47.2, 47.3, 47.4];
		await askTwin(doer, 'POST', '/sources', { source: service.source });
		const ids: string[] = [];
		for (const latitude of latitudes) {
			const id = await newLake(other, latitude);
			const order = [{ source: 'counting-service' }];
			await askTwin(latitude < 47.25 ? doer : other, 'PUT', `/lakes/${id}/sources`, { order });
			ids.push(id);
		}
		const all = latitudes.flatMap((latitude) => [`ahead ${latitude}`, `past ${latitude}`]);
		// Past the minute in which either would look, and some more for a second asking.
		await expect.poll(() => service.calls.toSorted(), { timeout: 90_000 }).toEqual(all.toSorted());
		await new Promise((done) => setTimeout(done, 5_000));
		expect(service.calls.toSorted()).toEqual(all.toSorted());
		service.calls.length = 0;
		const refresh = `/lakes/${ids[0]}/refresh`;
		const state = await askTwin<{ isRunning: boolean }>(other, 'POST', refresh);
		expect(state.isRunning).toBe(true);
		await expect
			.poll(() => askTwin<{ isRunning: boolean }>(other, 'GET', refresh), { timeout: 20_000 })
			.toMatchObject({ isRunning: false, sources: [{ status: 'done' }] });
		expect(service.calls.toSorted()).toEqual(['ahead 47.1', 'past 47.1']);
	}, 180_000);

	test('a message goes out once; when its sender is killed the other takes over in the time of a lease', async () => {
		const [sender, other] = await doerOf('telling');
		const id = await newLake(other, 44);
		await askTwin(other, 'POST', `/lakes/${id}/weather`, winterCsv(addDays(today, -60), 60));
		await askTwin(other, 'PUT', `/lakes/${id}/telling/webhook`, {
			address: receiver.at(),
			kinds: ['wentThrough']
		});
		for (const [turn, app] of [sender, other, sender, other].entries()) {
			await askTwin(app, 'POST', `/lakes/${id}/readings`, reading(`place ${turn}`, 'wentThrough'));
		}
		await expect.poll(() => told().length, { timeout: SOON_MS }).toBe(4);
		// What was taken is noted: killed before that, it would rightly be sent again, by the same id.
		await expect.poll(() => waiting(other, id)).toBe(0);
		await sender.kill();
		const killed_ms = performance.now();
		await askTwin(other, 'POST', `/lakes/${id}/readings`, reading('place 4', 'wentThrough'));
		await expect.poll(() => told().length, { timeout: TAKEN_OVER_MS }).toBe(5);
		expect(performance.now() - killed_ms).toBeLessThan(TAKEN_OVER_MS);
		expect([...other.does]).toEqual(expect.arrayContaining(['telling']));
		// Started again it does nothing of it, and what it writes is told by the other.
		apps = [other, await start()];
		await askTwin(
			apps[1] ?? other,
			'POST',
			`/lakes/${id}/readings`,
			reading('place 5', 'wentThrough')
		);
		await expect.poll(() => told().length, { timeout: SOON_MS }).toBe(6);
		await new Promise((done) => setTimeout(done, 5_000));
		const places = told().map((text) => /place \d/.exec(text)?.[0]);
		expect(places.toSorted()).toEqual([0, 1, 2, 3, 4, 5].map((turn) => `place ${turn}`));
	}, 240_000);

	test('one that is stopped in order hands its work over at once, and the database is whole', async () => {
		const [doer, other] = await doerOf('refreshing');
		await doer.stop();
		await expect.poll(() => other.does.has('refreshing'), { timeout: 8_000 }).toBe(true);
		await other.stop();
		const file = new SqliteFile(server ? server.url : join(folder, 'frostledger.db'));
		expect(file.prepare('PRAGMA integrity_check').all()).toEqual([{ integrity_check: 'ok' }]);
		expect(file.prepare('SELECT name FROM lease').all()).toEqual([]);
		file.close();
	});

	async function waiting(app: TwinApp, id: string): Promise<number> {
		const telling = `/lakes/${id}/telling`;
		return (await askTwin<{ webhook: { waiting: number } }>(app, 'GET', telling)).webhook.waiting;
	}

	const told = () => receiver.received.map(({ body }) => body);
});
