import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { render } from 'svelte/server';
import { expect, onTestFinished, test } from 'vitest';
import { closeContext, openContext, type Context } from '../../src/lib/server/context.ts';
import { storedAmounts } from '../../src/lib/server/services/stored-amounts.ts';
import { actions, load } from '../../src/routes/storage/+page.server.ts';
import { listLakes } from '../../src/lib/server/services/lakes.ts';
import { actions as bring } from '../../src/routes/storage/bring/+page.server.ts';
import BringPage from '../../src/routes/storage/bring/+page.svelte';
import StoragePage from '../../src/routes/storage/+page.svelte';
import { apiOf } from '../support/api.ts';
import { formEvent, outcomeOf } from '../support/form-event.ts';
import { freshContext, inventedLake } from '../support/fresh-context.ts';

async function onDisk(): Promise<Context> {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-storage-page-'));
	const ctx = await openContext({ FROSTLEDGER_DATA: folder });
	onTestFinished(async () => {
		await closeContext(ctx);
		rmSync(folder, { recursive: true, force: true });
	});
	return ctx;
}

async function textOf(context: Context, query = ''): Promise<string> {
	const data = await load(formEvent({ context, query }));
	const { body } = render(StoragePage, { props: { data, form: null, params: {} } as never });
	return body.replaceAll(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ');
}

test('the button makes a backup, and the page says so, and that keys are in it', async () => {
	const context = await onDisk();
	await inventedLake(context);
	const { status, location } = await outcomeOf(actions['backup'], formEvent({ context }));
	expect(status).toBe(303);
	const [name = ''] = readdirSync(join(context.place?.folder ?? '', 'backups'));
	expect(location).toBe(`/storage?made=${name}#backups`);
	const text = await textOf(context, `made=${name}`);
	expect(text).toContain('Made and checked:');
	expect(text).toContain('the backup on this machine holds the keys of your weather sources');
	expect(text).toContain('Download, without keys');
	expect(text).toMatch(/What people entered: lakes, winters, readings, loads \d+ \d+ kB/);
});

test('what is stored adds up to the file, and counts what people entered', async () => {
	const context = await onDisk();
	const before = await storedAmounts(context);
	await inventedLake(context);
	const after = await storedAmounts(context);
	const entered = (of: typeof after) => of?.amounts.find(({ kind }) => kind === 'entered')?.rows;
	// The lake and its site.
	expect((entered(after) ?? 0) - (entered(before) ?? 0)).toBeGreaterThanOrEqual(2);
	const sum_B = after?.amounts.reduce((sum, { size_B }) => sum + size_B, 0) ?? 0;
	expect(sum_B % 4096).toBe(0);
	expect(after?.database_B).toBeGreaterThanOrEqual(sum_B);
	expect(after?.free_B).toBeGreaterThan(0);
});

test('in memory only the page says that nothing is kept', async () => {
	const context = await freshContext();
	expect(await textOf(context)).toContain('Nothing is kept: everything is gone');
	const response = await apiOf(context)('POST', '/api/v1/backups');
	expect(response.status).toBe(409);
	expect(await response.json()).toMatchObject({
		detail: expect.stringContaining('in memory only')
	});
});

test('the API makes, lists and sends backups, and no other file', async () => {
	const context = await onDisk();
	const api = apiOf(context);
	const made = await api('POST', '/api/v1/backups');
	expect(made.status).toBe(201);
	const backup = (await made.json()) as { name: string };
	expect(await (await api('GET', '/api/v1/backups')).json()).toEqual([backup]);
	const sent = await api('GET', `/api/v1/backups/${backup.name}`);
	expect(sent.headers.get('content-disposition')).toBe(`attachment; filename="${backup.name}"`);
	const bytes = Buffer.from(await sent.arrayBuffer());
	expect(sent.headers.get('content-length')).toBe(String(bytes.length));
	for (const name of ['..%2Ffrostledger.db', 'frostledger.db', `${backup.name}.part-00000000`]) {
		expect((await api('GET', `/api/v1/backups/${name}`)).status).toBe(404);
	}
});

test('a zip file is looked at, then stored, and a bad one refused with what was wrong', async () => {
	const context = await freshContext();
	const lake = await inventedLake(context);
	const zip = await apiOf(context)('GET', `/api/v1/lakes/${lake.id}/winters.zip`);
	const file = new File([await zip.arrayBuffer()], 'mine.zip');
	const other = await freshContext();
	const send = (action: 'look' | 'store', sent: File) =>
		outcomeOf(bring[action], formEvent({ context: other, fields: { file: sent } }));
	const words = (data: unknown) => {
		const { body } = render(BringPage, { props: { data: {}, form: data, params: {} } as never });
		return body.replaceAll(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ');
	};
	const looked = await send('look', file);
	expect(words(looked.data)).toContain('mine.zip can be stored. Nothing is yet.');
	expect(await listLakes(other)).toEqual([]);
	const stored = await send('store', file);
	expect(words(stored.data)).toContain('Stored from mine.zip: Test Lake');
	expect(await listLakes(other)).toHaveLength(1);
	const again = await send('look', file);
	expect(words(again.data)).toContain('You have a lake of this name; this one would be another');
	const bad = await send('store', new File(['no zip'], 'bad.zip'));
	expect(bad.status).toBe(400);
	expect(words(bad.data)).toContain('The zip file cannot be unpacked');
	expect((await send('look', new File([], ''))).status).toBe(400);
});
