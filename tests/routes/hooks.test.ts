import type { RequestEvent } from '@sveltejs/kit';
import { afterEach, expect, onTestFinished, test, vi } from 'vitest';
import { handle, handleError } from '../../src/hooks.server.ts';
import { ON_THIS_MACHINE } from '../../src/lib/server/services/access/viewer.ts';
import { closeContext, getContext, startContext } from '../../src/lib/server/context.ts';

afterEach(() => {
	vi.restoreAllMocks();
});

/** What of a request the hooks look at. */
function asked(url: URL) {
	const cookies = { get: () => undefined };
	return { url, request: new Request(url), route: { id: null }, params: {}, cookies, locals: {} };
}

async function answer(method: string, headers: Record<string, string> = {}) {
	const context = await startContext({ FROSTLEDGER_DATA: ':memory:' });
	onTestFinished(() => closeContext(context));
	const url = new URL('http://localhost:3000/api/v1/lakes');
	const event = { ...asked(url), request: new Request(url, { method, headers }) };
	const resolve = vi.fn(async () => new Response('done'));
	const response = await handle({ event: event as unknown as RequestEvent, resolve });
	return { response, event, resolve };
}

test('every request is given the context, and every answer forbids guessing its type', async () => {
	const { response, event } = await answer('GET');
	expect(event.locals).toEqual({ context: getContext(), viewer: ON_THIS_MACHINE });
	expect(response.headers.get('x-content-type-options')).toBe('nosniff');
	expect(response.headers.get('x-frame-options')).toBe('DENY');
	expect(response.headers.get('referrer-policy')).toBe('same-origin');
});

test.each(['POST', 'PUT', 'PATCH', 'DELETE'])(
	'%s from another origin changes nothing',
	async (method) => {
		for (const origin of ['https://evil.example', 'null', 'http://localhost:3001']) {
			const { response, resolve } = await answer(method, { origin });
			expect(response.status).toBe(403);
			expect(response.headers.get('content-type')).toBe('application/problem+json');
			expect(resolve).not.toHaveBeenCalled();
		}
	}
);

test('a change from this origin, or from a program that names none, is taken', async () => {
	expect((await answer('POST', { origin: 'http://localhost:3000' })).response.status).toBe(200);
	expect((await answer('POST')).response.status).toBe(200);
});

test('reading from another origin is no change', async () => {
	expect((await answer('GET', { origin: 'https://other.example' })).response.status).toBe(200);
});

function failure(status: number) {
	const url = new URL('http://localhost:3000/lakes/pond');
	const event = { url, request: new Request(url) } as unknown as RequestEvent;
	return handleError({ error: new Error('disk full'), event, status, message: 'Not Found' });
}

test('a surprise is logged under an id, and the screen is told only the id', () => {
	const write = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
	const shown = failure(500) as { message: string; id: string };
	expect(shown.id).toMatch(/^\w{8}$/);
	expect(shown.message).not.toContain('disk full');
	expect(String(write.mock.calls[0]?.[0])).toContain(
		`[${shown.id}] GET /lakes/pond: Error: disk full`
	);
});

test('a page that is not there is no surprise', () => {
	const write = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
	expect(failure(404)).toEqual({ message: 'Not Found' });
	expect(write).not.toHaveBeenCalled();
});

test('a full disk is told in a sentence, with 503', async () => {
	vi.spyOn(process.stderr, 'write').mockReturnValue(true);
	const context = await startContext({ FROSTLEDGER_DATA: ':memory:' });
	onTestFinished(() => closeContext(context));
	const url = new URL('http://localhost:3000/lakes/pond');
	const event = asked(url) as unknown as RequestEvent;
	const error = Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' });
	const resolve = async () => {
		const shown = await handleError({ error, event, status: 500, message: 'Internal Error' });
		return Response.json(shown, { status: 500 });
	};
	const response = await handle({ event, resolve });
	expect(response.status).toBe(503);
	expect(response.headers.get('x-content-type-options')).toBe('nosniff');
	expect(await response.json()).toMatchObject({
		isTrouble: true,
		message: expect.stringMatching(/^The disk .* is full.*\.$/)
	});
});
