import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { closeContext, openContext, type Context } from '../../src/lib/server/context.ts';
import { makeBackup } from '../../src/lib/server/services/backups.ts';
import { troubleOf } from '../../src/lib/server/services/storage-trouble.ts';
import { apiOf } from '../support/api.ts';
import { inventedLake } from '../support/fresh-context.ts';

function mount(...words: string[]): boolean {
	return spawnSync('mount', words).status === 0;
}

/** Only who may mount can have a disk of their own that is small. */
function canMount(): boolean {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-mount-'));
	const isMounted = mount('-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', folder);
	if (isMounted) spawnSync('umount', [folder]);
	rmSync(folder, { recursive: true });
	return isMounted;
}

/** A disk of so many megabytes. */
function smallDisk(size_MB: number): string {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-disk-'));
	expect(mount('-t', 'tmpfs', '-o', `size=${size_MB}m`, 'tmpfs', folder)).toBe(true);
	onTestFinished(() => {
		spawnSync('umount', ['-l', folder]);
		rmSync(folder, { recursive: true, force: true });
	});
	return folder;
}

async function openOn(disk: string): Promise<Context> {
	const ctx = await openContext({ FROSTLEDGER_DATA: join(disk, 'data') });
	onTestFinished(() => closeContext(ctx));
	return ctx;
}

const READINGS = Array.from({ length: 20 }, () => ({
	on: '2026-01-10',
	kind: 'measured',
	holes: Array.from({ length: 10 }, () => ({ total_m: 0.3 })),
	remark: 'x'.repeat(1500)
}));

interface Answer {
	status: number;
	problem: { title?: string; detail?: string };
}

async function post(ctx: Context, lake: string): Promise<Answer> {
	const address = `/api/v1/lakes/${lake}/readings`;
	const response = await apiOf(ctx)('POST', address, { body: READINGS });
	return { status: response.status, problem: (await response.json()) as Answer['problem'] };
}

async function stored({ db }: Context): Promise<{ readings: number; holes: number }> {
	const { rows } = await sql<{ readings: number; holes: number }>`
		SELECT (SELECT count(*) FROM reading) AS readings, (SELECT count(*) FROM hole) AS holes`.execute(
		db
	);
	return rows[0] ?? { readings: -1, holes: -1 };
}

beforeEach(() => {
	vi.spyOn(process.stderr, 'write').mockReturnValue(true);
});
afterEach(() => {
	vi.mocked(process.stderr.write).mockRestore();
});

describe.runIf(canMount())('on a disk of its own', () => {
	test('when it is full that is said, nothing answered is lost, and with room it goes on', async () => {
		const disk = smallDisk(8);
		const ctx = await openOn(disk);
		const { id } = await inventedLake(ctx);
		const filler = join(disk, 'filler');
		let accepted = 0;
		let last = await post(ctx, id);
		while (last.status === 201) {
			accepted++;
			if (accepted === 10) fill(filler);
			last = await post(ctx, id);
			expect(accepted).toBeLessThan(1000);
		}
		expect(accepted).toBeGreaterThanOrEqual(10);
		expect(last).toMatchObject({ status: 503, problem: { title: 'Service Unavailable' } });
		expect(last.problem.detail).toMatch(/^The disk .* is full.*Make room on it and try again$/);
		expect(await stored(ctx)).toEqual({ readings: accepted * 20, holes: accepted * 200 });
		const failed = await makeBackup(ctx).catch((cause: unknown) => cause);
		expect(troubleOf(failed)).toMatch(/is full/);
		expect(readdirSync(join(disk, 'data', 'backups'))).toEqual([]);
		rmSync(filler);
		expect((await post(ctx, id)).status).toBe(201);
		expect(await stored(ctx)).toEqual({
			readings: (accepted + 1) * 20,
			holes: (accepted + 1) * 200
		});
		const { rows } = await sql`PRAGMA integrity_check`.execute(ctx.db);
		expect(rows).toEqual([{ integrity_check: 'ok' }]);
	});

	test('when it becomes read-only what is there is still shown, and changes are refused in a sentence', async () => {
		const disk = smallDisk(16);
		const ctx = await openOn(disk);
		const { id } = await inventedLake(ctx);
		expect((await post(ctx, id)).status).toBe(201);
		// While a file is open for writing a disk cannot be made read-only; this keeps it from writing.
		await sql`PRAGMA query_only = ON`.execute(ctx.db);
		const { status, problem } = await post(ctx, id);
		expect(status).toBe(503);
		expect(problem.detail).toMatch(/cannot be written to.*right to write there/);
		expect((await apiOf(ctx)('GET', `/api/v1/lakes/${id}/readings`)).status).toBe(200);
		await sql`PRAGMA query_only = OFF`.execute(ctx.db);
		expect((await post(ctx, id)).status).toBe(201);
		expect((await stored(ctx)).readings).toBe(40);
	});

	test('on a read-only disk the app does not start, and says why', async () => {
		const disk = smallDisk(16);
		expect(mount('-o', 'remount,ro', disk)).toBe(true);
		const refused = openContext({ FROSTLEDGER_DATA: join(disk, 'data') });
		await expect(refused).rejects.toThrow(/could not be opened.*FROSTLEDGER_DATA/);
		expect(mount('-o', 'remount,rw', disk)).toBe(true);
		expect(await stored(await openOn(disk))).toEqual({ readings: 0, holes: 0 });
	});
});

/** Takes all the room that is left. */
function fill(path: string): void {
	const chunk = Buffer.alloc(64 * 1024);
	try {
		for (;;) writeFileSync(path, chunk, { flag: 'a' });
	} catch (cause) {
		expect((cause as NodeJS.ErrnoException).code).toBe('ENOSPC');
	}
}
