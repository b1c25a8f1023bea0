import { expect, test } from 'vitest';
import { refuseForeign } from '../../src/routes/own-origin.ts';

const url = new URL('https://ice.example/lakes/pond');
const asked = (headers: Record<string, string>, method = 'POST') =>
	refuseForeign({ url, request: new Request(url, { method, headers }) });

const OWN = { origin: 'https://ice.example' };

test.each([
	['another host', { origin: 'https://evil.example' }],
	['the same host without https', { origin: 'http://ice.example' }],
	['another port', { origin: 'https://ice.example:444' }],
	['a name that begins alike', { origin: 'https://ice.example.evil.example' }],
	['a frame without an origin', { origin: 'null' }],
	['an origin that is no address', { origin: 'ice.example' }],
	['no origin, from a page elsewhere', { referer: 'https://evil.example/x' }],
	['no origin, from a page that is no address', { referer: 'about:blank' }],
	['no origin, fetched across sites', { 'sec-fetch-site': 'cross-site' }],
	['no origin, fetched from a sibling host', { 'sec-fetch-site': 'same-site' }],
	['a form that names nothing', { 'content-type': 'application/x-www-form-urlencoded' }],
	['its own origin, fetched across sites', { ...OWN, 'sec-fetch-site': 'cross-site' }]
])('a change is refused: %s', async (_, headers) => {
	for (const method of ['POST', 'PUT', 'PATCH', 'DELETE', 'PROPFIND']) {
		const refused = asked(headers, method);
		expect(refused?.status).toBe(403);
		expect(await refused?.json()).toMatchObject({ detail: expect.stringContaining('this site') });
	}
	expect(asked(headers, 'GET')).toBeNull();
});

test.each([
	['a page of its own', { ...OWN, 'sec-fetch-site': 'same-origin' }],
	['a page of its own in an old browser', OWN],
	['its own page without an origin', { referer: 'https://ice.example/lakes' }],
	['a program', {}],
	['a person', { 'sec-fetch-site': 'none' }]
])('a change is taken: %s', (_, headers) => {
	expect(asked(headers)).toBeNull();
});
