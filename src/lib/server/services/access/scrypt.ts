import { randomBytes, scrypt, timingSafeEqual, type ScryptOptions } from 'node:crypto';
import { promisify } from 'node:util';

const derive = promisify<string, Buffer, number, ScryptOptions, Buffer>(scrypt);

/** 32 MB and some tenths of a second for each try (2¹⁵ · 8 · 128 bytes). Common practice for passwords. */
const COST = { log2N: 15, r: 8, p: 3 };
const KEY_BYTES = 32;

/** What is stored of a passphrase: the cost, the salt and the derived key, parted by `$`. */
export async function scryptHash(passphrase: string): Promise<string> {
	const salt = randomBytes(16);
	const { log2N, r, p } = COST;
	const key = await derived(passphrase, salt, COST);
	return ['scrypt', log2N, r, p, salt.toString('base64url'), key.toString('base64url')].join('$');
}

/** Whether a passphrase is the one that a hash was made of. A hash that cannot be read fits none. */
export async function scryptFits(passphrase: string, hash: string): Promise<boolean> {
	const [name, log2N, r, p, salt = '', key = ''] = hash.split('$');
	if (name !== 'scrypt' || key === '') return false;
	const expected = Buffer.from(key, 'base64url');
	const cost = { log2N: Number(log2N), r: Number(r), p: Number(p) };
	const given = await derived(passphrase, Buffer.from(salt, 'base64url'), cost);
	return given.length === expected.length && timingSafeEqual(given, expected);
}

/** One at a time: many tries at once must not take the machine's memory. */
let last: Promise<unknown> = Promise.resolve();

function derived(passphrase: string, salt: Buffer, { log2N, r, p }: typeof COST): Promise<Buffer> {
	const N = 2 ** log2N;
	// Typed on another keyboard the same letters may come in another form.
	const text = passphrase.normalize('NFKC');
	const work = last.then(() => derive(text, salt, KEY_BYTES, { N, r, p, maxmem: 256 * N * r }));
	last = work.catch(() => undefined);
	return work;
}
