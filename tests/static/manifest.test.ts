import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';

/** As much of a web app manifest as a phone asks for before it installs one. */
const manifest = z.object({
	id: z.string().startsWith('/'),
	name: z.string().min(1).max(45),
	short_name: z.string().min(1).max(12),
	start_url: z.string().startsWith('/'),
	scope: z.string().startsWith('/'),
	display: z.enum(['standalone', 'minimal-ui', 'fullscreen']),
	background_color: z.string().regex(/^#[\da-f]{6}$/),
	theme_color: z.string().regex(/^#[\da-f]{6}$/),
	icons: z.array(
		z.object({
			src: z.string().startsWith('/icons/'),
			type: z.enum(['image/png', 'image/svg+xml']),
			sizes: z.string().regex(/^(any|\d+x\d+)$/),
			purpose: z.enum(['any', 'maskable'])
		})
	)
});

const told = manifest.parse(JSON.parse(readFileSync('static/manifest.webmanifest', 'utf8')));

/** Width and height stand at a fixed place of every PNG, in its first chunk. */
function sizeOfPng(path: string): string {
	const bytes = readFileSync(path);
	expect(bytes.subarray(1, 4).toString()).toBe('PNG');
	return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
}

test('every icon of the manifest is there in the size it is said to have', () => {
	for (const { src, type, sizes } of told.icons) {
		expect(existsSync(`static${src}`), src).toBe(true);
		if (type === 'image/png') expect(sizeOfPng(`static${src}`), src).toBe(sizes);
		else expect(readFileSync(`static${src}`, 'utf8')).toMatch(/^<svg /);
	}
});

test('a phone finds the sizes it installs by, and one that it may cut to its own shape', () => {
	const plain = told.icons.filter(({ purpose }) => purpose === 'any').map(({ sizes }) => sizes);
	expect(plain).toEqual(expect.arrayContaining(['192x192', '512x512']));
	expect(told.icons.some(({ purpose }) => purpose === 'maskable')).toBe(true);
});

test('the page names the manifest, and colours for light and dark that the styles have too', () => {
	const html = readFileSync('src/app.html', 'utf8');
	const tokens = readFileSync('src/lib/ui/styles/tokens.css', 'utf8');
	const [, light, dark] = /--paper: light-dark\((#\w+), (#\w+)\)/.exec(tokens) ?? [];
	expect(html).toContain('rel="manifest"');
	expect(html).toContain(`content="${light}" media="(prefers-color-scheme: light)"`);
	expect(html).toContain(`content="${dark}" media="(prefers-color-scheme: dark)"`);
	expect(told.theme_color).toBe(light);
	expect(told.background_color).toBe(light);
});
