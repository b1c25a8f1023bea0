import { expect, test } from 'vitest';
import {
	fitsPassphrase,
	hasPassphrase,
	removePassphrase,
	setPassphrase,
	whyPassphraseRefused
} from '../../../../src/lib/server/services/access/passphrase.ts';
import { scryptFits } from '../../../../src/lib/server/services/access/scrypt.ts';
import { readPassphraseHash } from '../../../../src/lib/server/storage/passphrase.ts';
import { PASSPHRASE } from '../../../support/access.ts';
import { freshContext } from '../../../support/fresh-context.ts';

test('a passphrase is kept as a salted hash that only it fits', async () => {
	const ctx = await freshContext();
	expect(await hasPassphrase(ctx)).toBe(false);
	expect(await fitsPassphrase(ctx, '')).toBe(false);
	await setPassphrase(ctx, PASSPHRASE);
	const hash = await readPassphraseHash(ctx.db);
	expect(hash).toMatch(/^scrypt\$15\$8\$3\$/);
	expect(hash).not.toContain(PASSPHRASE);
	expect(await fitsPassphrase(ctx, PASSPHRASE)).toBe(true);
	expect(await fitsPassphrase(ctx, `${PASSPHRASE} `)).toBe(false);
	await setPassphrase(ctx, PASSPHRASE);
	expect(await readPassphraseHash(ctx.db)).not.toBe(hash);
	await removePassphrase(ctx);
	expect(await fitsPassphrase(ctx, PASSPHRASE)).toBe(false);
});

test('the same letters in another form of Unicode are the same passphrase', async () => {
	const ctx = await freshContext();
	await setPassphrase(ctx, 'sj\u00f6is och dimma');
	expect(await fitsPassphrase(ctx, 'sjo\u0308is och dimma')).toBe(true);
});

test('a hash that cannot be read fits nothing', async () => {
	for (const hash of ['', 'scrypt', 'scrypt$15$8$3$$', 'plain$15$8$3$AA$AA'])
		expect(await scryptFits('', hash)).toBe(false);
});

test.each([
	['', /0 characters; take 12 or more/],
	['elevenchars', /11 characters/],
	['x'.repeat(501), /more than 500/]
])('%s is refused with a remedy', (passphrase, why) => {
	expect(whyPassphraseRefused(passphrase)).toMatch(why);
});

test('twelve characters are enough', () => {
	expect(whyPassphraseRefused('twelve chars')).toBeNull();
});
