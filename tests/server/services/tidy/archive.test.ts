import { strToU8, zipSync, type Zippable } from 'fflate';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
	ARCHIVE_LIMITS,
	isPlainPath,
	packWinters,
	unpackWinters
} from '../../../../src/lib/server/services/tidy/archive.ts';
import { importWinters } from '../../../../src/lib/server/services/tidy/import-winters.ts';
import { freshContext } from '../../../support/fresh-context.ts';

const LAKES = 'dataset,lake,lat,lon\n';

function zipped(files: Record<string, string | Uint8Array>, level: 0 | 9 = 9): Uint8Array {
	const entries: Zippable = {};
	for (const [name, data] of Object.entries(files)) {
		entries[name] = typeof data === 'string' ? strToU8(data) : data;
	}
	return zipSync(entries, { level });
}

/** Writes another size into each place where the archive tells what an entry unpacks to. */
function claiming(zip: Uint8Array, field: 'packed' | 'unpacked', size_B: number): Uint8Array {
	const bytes = zip.slice();
	const view = new DataView(bytes.buffer);
	for (let at = 0; at < bytes.length - 4; at++) {
		const signature = view.getUint32(at, true);
		const offset = field === 'packed' ? 0 : 4;
		if (signature === 0x04034b50) view.setUint32(at + 18 + offset, size_B, true);
		if (signature === 0x02014b50) view.setUint32(at + 20 + offset, size_B, true);
	}
	return bytes;
}

test('a folder around everything is taken off, and what is no table is left alone', () => {
	const files = { 'mine/lakes.csv': LAKES, 'mine/a/ice.csv': 'x', 'mine/photo.jpg': 'y' };
	const unpacked = unpackWinters(zipped(files));
	expect(unpacked.files && Object.fromEntries(unpacked.files)).toEqual({
		'lakes.csv': LAKES,
		'a/ice.csv': 'x'
	});
});

test.each([
	'../lakes.csv',
	'a/../../etc/passwd.csv',
	'/etc/passwd.csv',
	'..\\lakes.csv',
	'C:/lakes.csv',
	'a//b.csv',
	'./lakes.csv',
	'__proto__/x.csv',
	`${'long/'.repeat(60)}x.csv`
])('an entry named %s is refused, and the whole file with it', (name) => {
	const unpacked = unpackWinters(zipped({ 'lakes.csv': LAKES, [name]: 'x' }));
	expect(unpacked.files).toBe(null);
	expect(unpacked.problem).toContain('leads out of the folder');
});

test('a bomb that says its size is refused before it is unpacked', () => {
	const bomb = zipped({ 'lakes.csv': LAKES, 'a/weather.csv': new Uint8Array(60_000_000) });
	expect(bomb.length).toBeLessThan(200_000);
	const before_B = process.memoryUsage().arrayBuffers;
	expect(unpackWinters(bomb).problem).toMatch(/unpacks “a\/weather.csv” to more than 8 MB/);
	expect(process.memoryUsage().arrayBuffers - before_B).toBeLessThan(1_000_000);
});

test('many entries that are large together are refused', () => {
	const half = new Uint8Array(7_000_000);
	const names = Array.from({ length: 8 }, (_, n) => [`a/${n}.csv`, half] as const);
	const zip = zipped({ 'lakes.csv': LAKES, ...Object.fromEntries(names) });
	expect(unpackWinters(zip).problem).toMatch(/unpacks to more than 40 MB/);
});

test('a bomb that lies about its size fills no more than it says', () => {
	const bomb = zipped({ 'lakes.csv': new Uint8Array(30_000_000) });
	const unpacked = unpackWinters(claiming(bomb, 'unpacked', 1000));
	const sizes = [...(unpacked.files ?? new Map<string, string>()).values()].map(
		({ length }) => length
	);
	expect(Math.max(0, ...sizes)).toBeLessThanOrEqual(1000);
});

test('one piece that serves for many entries is refused', () => {
	const names = Array.from({ length: 50 }, (_, n) => [`a/${n}.csv`, 'x'.repeat(100)] as const);
	const zip = zipped({ 'lakes.csv': LAKES, ...Object.fromEntries(names) }, 0);
	expect(unpackWinters(claiming(zip, 'packed', zip.length / 2)).problem).toMatch(/overlap/);
});

test('too many entries are refused', () => {
	const names = Array.from({ length: ARCHIVE_LIMITS.entries + 1 }, (_, n) => [`a/${n}.txt`, '']);
	const zip = zipped({ 'lakes.csv': LAKES, ...Object.fromEntries(names) });
	expect(unpackWinters(zip).problem).toMatch(/more than 500 entries/);
});

test.each([
	['a text', strToU8('this is no zip file at all, though it is long enough'), /cannot be unpacked/],
	['nothing', new Uint8Array(), /cannot be unpacked/],
	['no lakes.csv', zipped({ 'a/ice.csv': 'x' }), /has no lakes.csv/],
	['two of them', zipped({ 'a/lakes.csv': LAKES, 'b/lakes.csv': LAKES }), /more than one/],
	['too much', new Uint8Array(ARCHIVE_LIMITS.zip_B + 1), /more than 16 MB/]
])('%s is refused in a sentence', (_, bytes, why) => {
	expect(unpackWinters(bytes).problem).toMatch(why);
});

test('a damaged zip is refused or read, and never breaks anything', async () => {
	const good = packWinters(
		new Map([
			['lakes.csv', 'dataset,lake,lat,lon\na,A,50,-40\n'],
			['a/weather.csv', 'date,tmean_c\n2027-01-01,-5\n'],
			['a/freezeup.csv', 'lake,winter,freeze_up_date\nA,2026-27,2026-12-01\n'],
			['a/ice.csv', 'lake,date,total_cm\nA,2027-01-10,20\n']
		]),
		new Date('2027-02-01')
	);
	const ctx = await freshContext();
	const damage = fc.array(fc.tuple(fc.nat(good.length - 1), fc.integer({ min: 0, max: 255 })), {
		minLength: 1,
		maxLength: 6
	});
	await fc.assert(
		fc.asyncProperty(damage, fc.nat(good.length), async (changes, cut) => {
			const bytes = good.slice(0, cut % 7 === 0 ? cut : good.length);
			for (const [at, value] of changes) bytes[at] = value;
			const unpacked = unpackWinters(bytes);
			if (!unpacked.files) {
				expect(unpacked.problem).toMatch(/^The zip file /);
				return;
			}
			const { status } = await importWinters(ctx, unpacked.files, { dryRun: true });
			expect(['dryRun', 'refused']).toContain(status);
		}),
		{ numRuns: 400 }
	);
});

test('plain paths', () => {
	expect(['a.csv', 'a b/c.csv', 'pond-1/readings/main.csv', 'å/b.csv'].every(isPlainPath)).toBe(
		true
	);
});
