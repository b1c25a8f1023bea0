import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openContext } from '../../../../src/lib/server/context.ts';
import { isLoopback, whyReachable } from '../../../../src/lib/server/public-address.ts';
import { requirePassphraseWhereReachable } from '../../../../src/lib/server/services/access/exposure.ts';
import { fitsPassphrase } from '../../../../src/lib/server/services/access/passphrase.ts';
import { readPassphraseHash } from '../../../../src/lib/server/storage/passphrase.ts';
import { PASSPHRASE } from '../../../support/access.ts';

async function started(environment: Record<string, string>) {
	const whole = { FROSTLEDGER_DATA: ':memory:', ...environment };
	const ctx = await openContext(whole);
	onTestFinished(() => ctx.db.destroy());
	return { ctx, start: () => requirePassphraseWhereReachable(ctx, whole) };
}

test.each([
	'127.0.0.1',
	'127.8.0.1',
	'::1',
	'[::1]',
	'localhost',
	'app.localhost',
	'::ffff:127.0.0.1'
])('%s is this machine alone', (host) => expect(isLoopback(host)).toBe(true));

test.each([
	'0.0.0.0',
	'::',
	'192.168.1.7',
	'ice.example',
	'127.0.0.1.example',
	'localhost.example'
])('%s is not', (host) => expect(isLoopback(host)).toBe(false));

test.each([
	[{}, null],
	[{ HOST: ' localhost ', FROSTLEDGER_HOSTS: 'app.localhost, 127.0.0.1' }, null],
	[{ FROSTLEDGER_ADDRESS: 'http://localhost:3000' }, null],
	[{ HOST: '0.0.0.0' }, 'HOST is "0.0.0.0"'],
	[{ FROSTLEDGER_HOSTS: 'localhost,ice.lan' }, 'FROSTLEDGER_HOSTS names "ice.lan"'],
	[{ FROSTLEDGER_ADDRESS: 'https://ice.example' }, 'FROSTLEDGER_ADDRESS is "https://ice.example"']
])('%j lets others in: %s', (environment, why) => {
	expect(whyReachable(environment)).toBe(why);
});

test.each([
	{ HOST: '0.0.0.0' },
	{ FROSTLEDGER_HOSTS: 'ice.lan' },
	{ FROSTLEDGER_ADDRESS: 'https://ice.example' }
])('with %j it does not start without a passphrase, and says what to do', async (environment) => {
	const { start } = await started(environment);
	await expect(start()).rejects.toThrow(/so that others can reach .* "npm run passphrase"/);
});

test('the passphrase of the environment is taken over, once, and then it starts', async () => {
	const { ctx, start } = await started({ HOST: '::', FROSTLEDGER_PASSPHRASE: PASSPHRASE });
	await start();
	expect(await fitsPassphrase(ctx, PASSPHRASE)).toBe(true);
	const hash = await readPassphraseHash(ctx.db);
	await start();
	expect(await readPassphraseHash(ctx.db)).toBe(hash);
});

test('it is read from a file as well, without the end of its line', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-passphrase-'));
	onTestFinished(() => rmSync(folder, { recursive: true }));
	const file = join(folder, 'passphrase');
	writeFileSync(file, `${PASSPHRASE}\r\n`);
	const { ctx, start } = await started({ FROSTLEDGER_PASSPHRASE_FILE: file });
	await start();
	expect(await fitsPassphrase(ctx, PASSPHRASE)).toBe(true);
	const missing = await started({ FROSTLEDGER_PASSPHRASE_FILE: join(folder, 'nowhere') });
	await expect(missing.start()).rejects.toThrow(/nowhere", which cannot be read \(ENOENT\); name/);
});

test('one that is too short is refused before anything is served', async () => {
	const { start } = await started({ FROSTLEDGER_PASSPHRASE: 'short' });
	await expect(start()).rejects.toThrow(
		/^FROSTLEDGER_PASSPHRASE cannot be used: The passphrase has 5/
	);
});
