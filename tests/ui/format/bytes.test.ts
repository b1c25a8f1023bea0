import { expect, test } from 'vitest';
import { bytes } from '#lib/ui/format/bytes.ts';

test.each([
	[0, '0 kB'],
	[1, '0.1 kB'],
	[4096, '4.1 kB'],
	[9_950, '10 kB'],
	[299_008, '300 kB'],
	[1_100_000, '1.1 MB'],
	[1_234_567, '1.3 MB'],
	[84_000_000_000, '84 GB'],
	[5e15, '5000 TB']
])('%d bytes are %s', (size_B, text) => {
	expect(bytes(size_B)).toBe(text);
});
