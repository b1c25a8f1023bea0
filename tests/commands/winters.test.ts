import { spawnSync } from 'node:child_process';
import {
	existsSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	rmSync,
	symlinkSync
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { findingsOf } from '../../src/commands/validate/findings.ts';
import { asShipped } from '../../src/commands/validate/modes.ts';
import { report } from '../../src/commands/validate/report.ts';
import { selectScored } from '../../src/commands/validate/selection.ts';
import { readTidyFolder } from '../../src/commands/validate/tidy-folder.ts';
import { readWintersAt, writeWinters } from '../../src/commands/stored/winters-folder.ts';
import { exportWinters } from '../../src/lib/server/services/tidy/export-winters.ts';
import { importWinters } from '../../src/lib/server/services/tidy/import-winters.ts';
import { readingInput } from '../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../src/lib/server/services/readings.ts';
import { saveSiteWinter, winterInput } from '../../src/lib/server/services/winters.ts';
import { drilledLake } from '../support/drilled-lake.ts';
import { freshContext } from '../support/fresh-context.ts';

function folder(): string {
	const path = mkdtempSync(join(tmpdir(), 'frostledger-winters-'));
	onTestFinished(() => rmSync(path, { recursive: true, force: true }));
	return path;
}

function command(name: 'export' | 'import', words: string[], data: string, from: string) {
	const { stdout, stderr, status } = spawnSync(
		process.execPath,
		['--import', 'tsx', `src/commands/${name}.ts`, ...words],
		{ encoding: 'utf8', env: { ...process.env, FROSTLEDGER_DATA: data, INIT_CWD: from } }
	);
	return { stdout, stderr, status };
}

test('the model can be scored on a lake that was exported', async () => {
	const { ctx, id } = await drilledLake();
	const path = join(folder(), 'winters');
	writeWinters(path, await exportWinters(ctx, id), ctx.now());
	const selection = selectScored(readTidyFolder(path));
	expect(selection.winters.map(({ winter, readings }) => [winter, readings.length])).toEqual([
		['2025-26', 2],
		['2026-27', 2]
	]);
	const [first] = selection.winters;
	expect(first).toMatchObject({ freezeUpOn: '2025-11-20', lakeKey: `${id}/${id}` });
	expect(first?.readings[0], 'the mean of two holes').toMatchObject({ total_m: 0.15 });
	const scores = report(selection, 'shipped', findingsOf(selection.winters, asShipped));
	expect(scores.modes.prior['all']?.growth).toMatchObject({ n: 4, unanswered: 0 });
	expect(scores.modes.learned['all']?.growth.n).toBe(4);
});

test('what the tables cannot tell is not scored: worked ice, a landing, broken or untouched ice', async () => {
	const { ctx, id } = await drilledLake();
	const seen = (on: string, more: object) =>
		readingInput.parse({ on, kind: 'measured', holes: [{ total_m: 0.4 }], ...more });
	await addReadings(ctx, id, 'main', [
		seen('2026-12-20', { place: 'Landing' }),
		seen('2026-12-20', { kind: 'wentThrough' }),
		seen('2026-12-20', { kind: 'atLeast' }),
		seen('2027-01-20', {})
	]);
	const events = [{ kind: 'cleared', on: '2027-01-05', snow_m: 0 }];
	const record = winterInput.parse({ freezeUpOn: '2026-11-20', events });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	const path = join(folder(), 'winters');
	writeWinters(path, await exportWinters(ctx, id), ctx.now());
	const { winters, leftOut } = selectScored(readTidyFolder(path));
	expect(winters.at(-1)?.readings.map(({ on }) => on)).toEqual(['2026-12-15']);
	expect(leftOut.opened).toBe(0);
	const reopened = [{ kind: 'reopened', on: '2027-01-05', refrozeOn: '2027-01-09' }];
	const again = winterInput.parse({ freezeUpOn: '2026-11-20', events: reopened });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...again });
	const second = join(folder(), 'winters');
	writeWinters(second, await exportWinters(ctx, id), ctx.now());
	expect(selectScored(readTidyFolder(second)).leftOut.opened).toBeGreaterThan(0);
});

test('by command a lake is exported, looked at, and brought into another data folder', async () => {
	const { ctx, id } = await drilledLake();
	const files = await exportWinters(ctx, id);
	const [called, data, other] = [folder(), join(folder(), 'a'), join(folder(), 'b')];
	writeWinters(join(called, 'lake.zip'), files, ctx.now());
	expect(command('import', ['lake.zip'], data, called)).toMatchObject({ status: 0, stderr: '' });
	const made = command('export', [id, 'out'], data, called);
	expect(made).toMatchObject({ stderr: '', status: 0 });
	expect(readFileSync(join(called, 'out', id, 'ice.csv'), 'utf8')).toBe(files.get(`${id}/ice.csv`));
	const dry = command('import', ['out', '--dry-run'], other, called);
	expect(dry.stdout).toMatch(/^Would be stored: Test Lake, 1 sites, 2 winters, 4 readings/);
	expect(command('export', ['nowhere', 'x'], other, called).stderr).toContain('there are none');
	const again = command('export', [id, 'out'], data, called);
	expect(again).toMatchObject({ stdout: '', status: 2 });
	expect(again.stderr).toContain('not an empty folder');
}, 120_000);

test('links in a folder are not followed, and a folder without lakes.csv is refused', async () => {
	const { ctx, id } = await drilledLake();
	const path = join(folder(), 'winters');
	writeWinters(path, await exportWinters(ctx, id), ctx.now());
	symlinkSync('/etc/hostname', join(path, id, 'secret.csv'));
	mkdirSync(join(path, 'empty'));
	const read = readWintersAt(path);
	expect([...read.keys()].toSorted()).toEqual(
		['lakes.csv', 'weather', 'ice', 'freezeup', 'events', 'readings/main']
			.map((name) => (name === 'lakes.csv' ? name : `${id}/${name}.csv`))
			.toSorted()
	);
	expect((await importWinters(await freshContext(), read)).status).toBe('stored');
	expect(() => readWintersAt(join(path, id))).toThrow('no lakes.csv');
	expect(existsSync(join(path, 'empty')) && readdirSync(join(path, 'empty'))).toEqual([]);
});
