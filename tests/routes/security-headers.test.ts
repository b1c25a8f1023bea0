import { expect, test } from 'vitest';
import { secured } from '../../src/routes/security-headers.ts';

const HTTPS = 'https://ice.example';
const page = () => new Response('<p>', { headers: { 'content-type': 'text/html' } });
const headersOf = (
	response: Response,
	address: string | null = null,
	url = `${HTTPS}/lakes/pond`
) => secured(response, { url: new URL(url), address }).headers;

test('a page is kept by its visitor alone, and data by nobody', () => {
	expect(headersOf(page()).get('cache-control')).toBe('private, no-cache');
	expect(headersOf(Response.json({})).get('cache-control')).toBe('private, no-store');
	const told = Response.json({}, { headers: { 'cache-control': 'no-store' } });
	expect(headersOf(told).get('cache-control')).toBe('no-store');
});

test('what a page may load stands, and what is no page may load nothing', () => {
	const own = new Response('<p>', { headers: { 'content-security-policy': "default-src 'self'" } });
	expect(headersOf(own).get('content-security-policy')).toBe("default-src 'self'");
	expect(headersOf(Response.json({})).get('content-security-policy')).toMatch(
		/^default-src 'none';/
	);
});

test('only the public name is held to https, and only over https', () => {
	const held = (address: string | null, url?: string) =>
		headersOf(page(), address, url).get('strict-transport-security');
	expect(held(HTTPS)).toBe('max-age=31536000');
	expect(held(null)).toBeNull();
	expect(held(HTTPS, 'http://ice.example/')).toBeNull();
	expect(held(HTTPS, 'https://localhost/')).toBeNull();
	expect(held('http://ice.example', 'http://ice.example/')).toBeNull();
});

test('an address never goes to another site, and no other site holds on to a page', () => {
	const headers = headersOf(page());
	expect(headers.get('referrer-policy')).toBe('same-origin');
	expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
	expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
	expect(headers.get('permissions-policy')).toMatch(/^geolocation=\(self\), camera=\(\)/);
});
