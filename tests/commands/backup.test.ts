import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteFile from 'libsql';
import { expect, onTestFinished, test } from 'vitest';

function folder(): string {
	const path = mkdtempSync(join(tmpdir(), 'frostledger-backup-command-'));
	onTestFinished(() => rmSync(path, { recursive: true, force: true }));
	return path;
}

function command(name: 'backup' | 'restore', words: string[], data: string, from: string) {
	const { stdout, stderr, status } = spawnSync(
		process.execPath,
		['--import', 'tsx', `src/commands/${name}.ts`, ...words],
		{ encoding: 'utf8', env: { ...process.env, FROSTLEDGER_DATA: data, INIT_CWD: from } }
	);
	return { stdout, stderr, status };
}

test('one command makes a backup where it is called, one restores it onto an empty machine', () => {
	const [data, called, other] = [folder(), folder(), join(folder(), 'new')];
	const file = new SqliteFile(join(data, 'frostledger.db'));
	file.exec(readFileSync('tests/support/first-schema.sql', 'utf8'));
	file.close();
	const made = command('backup', ['winter.db'], data, called);
	expect(made).toMatchObject({ stderr: '', status: 0 });
	expect(made.stdout).toContain(`Backup, checked: ${join(called, 'winter.db')}`);
	expect(made.stdout).toContain('holds the keys of weather services and webhooks');
	expect(command('restore', ['winter.db'], other, called)).toMatchObject({ stderr: '', status: 0 });
	const restored = new SqliteFile(join(other, 'frostledger.db'));
	onTestFinished(() => void restored.close());
	expect(restored.prepare('SELECT name FROM lake').all()).toEqual([{ name: "Pond of O'Nobody" }]);
	const again = command('restore', ['winter.db'], other, called);
	expect(again).toMatchObject({ stdout: '', status: 2 });
	expect(again.stderr).toContain('add --replace');
});

test.each([
	['backup', ['a.db', 'b.db'], 'name one file'],
	['backup', [], 'There is no database'],
	['backup', ['--all'], '--all'],
	['restore', [], 'name one file'],
	['restore', ['nowhere.db'], 'There is no file']
] as const)('%s %j says in one line what is wrong, and makes nothing', (name, words, why) => {
	const data = join(folder(), 'none');
	const { stdout, stderr, status } = command(name, [...words], data, folder());
	expect({ stdout, status }).toEqual({ stdout: '', status: 2 });
	expect(stderr).toContain(why);
	expect(stderr.trim().split('\n')).toHaveLength(1);
	expect(existsSync(data)).toBe(false);
});
