import type { RequestEvent } from '@sveltejs/kit';
import { expect, test } from 'vitest';
import { RateLimits } from '../../../src/routes/limits/rate-limits.ts';

interface Asked {
	path?: string;
	route?: string;
	method?: string;
	from?: string;
	headers?: Record<string, string>;
}

function event({ path = '/x', route = '/x', method = 'POST', from, headers = {} }: Asked) {
	const url = new URL(path, 'http://ice.example');
	const request = new Request(url, { method, headers });
	const getClientAddress = () => from ?? '203.0.113.9';
	return { url, request, route: { id: route }, getClientAddress } as unknown as RequestEvent;
}

/** How many of a thousand at once go through. */
function granted(asked: Asked, limits = new RateLimits()): number {
	const all = Array.from({ length: 1000 }, () => limits.refuse(event(asked), 0));
	return all.filter((refused) => refused === null).length;
}

test('changes from one address are held to a pace, and reading is not', () => {
	for (const method of ['POST', 'PUT', 'PATCH', 'DELETE']) expect(granted({ method })).toBe(120);
	for (const method of ['GET', 'HEAD']) expect(granted({ method })).toBe(1000);
});

const TRY = { path: '/sources/new?from=a&/try', route: '/sources/new' };

test('what calls another server is held to a slower one, whichever way it is asked for', () => {
	const limits = new RateLimits();
	expect(granted(TRY, limits)).toBe(10);
	expect(granted({ route: '/api/v1/sources/try' }, limits)).toBe(0);
	expect(granted({ route: '/lakes/[lake]/telling', path: '/x?/test' })).toBe(10);
	expect(granted({ route: '/lakes/[lake]/telling', path: '/x?/what' })).toBe(120);
});

test('this machine is let through, short of a loop gone wild', () => {
	const limits = new RateLimits();
	const here = { from: '127.0.0.1', path: 'http://localhost/x' };
	for (let round = 0; round < 12; round++) expect(granted(here, limits)).toBe(1000);
	expect(granted(here, limits)).toBe(0);
});

test('a program is told by problem details how long to wait', async () => {
	const limits = new RateLimits();
	granted({}, limits);
	const refused = limits.refuse(event({}), 0);
	expect(refused?.status).toBe(429);
	expect(refused?.headers.get('retry-after')).toBe('1');
	expect(refused?.headers.get('content-type')).toBe('application/problem+json');
	expect(await refused?.json()).toMatchObject({
		status: 429,
		detail: expect.stringContaining('Wait a second')
	});
	expect(limits.refuse(event({}), 1000)).toBeNull();
});

test('a form’s script is told so that what was typed stays, and a person by a page', async () => {
	const limits = new RateLimits();
	granted(TRY, limits);
	const scripted = limits.refuse(event({ ...TRY, headers: { 'x-sveltekit-action': 'true' } }), 0);
	expect(await scripted?.json()).toMatchObject({
		type: 'error',
		error: { message: expect.stringContaining('Wait 20 seconds') }
	});
	const page = limits.refuse(event({ ...TRY, headers: { accept: 'text/html,*/*' } }), 0);
	expect(page?.headers.get('content-type')).toContain('text/html');
	expect(await page?.text()).toContain('What you sent is not stored');
});
