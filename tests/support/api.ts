import type { RequestEvent } from '@sveltejs/kit';
import type { Context } from '../../src/lib/server/context.ts';
import { ON_THIS_MACHINE, type Viewer } from '../../src/lib/server/services/access/viewer.ts';

type Handler = (event: RequestEvent) => Promise<Response> | Response;

const modules = import.meta.glob<Record<string, Handler>>('/src/routes/api/**/+server.ts', {
	eager: true
});

/** The addresses of the API, those with fewer parameters first and a rest last, as Kit orders them. */
const routes = Object.entries(modules)
	.map(([file, handlers]) => ({ ...pattern(file), handlers }))
	.toSorted((a, b) => Number(a.hasRest) - Number(b.hasRest) || a.names.length - b.names.length);

export interface Call {
	body?: unknown;
	/** Sent as it is, with the type given or `text/csv`. */
	text?: string | ReadableStream<Uint8Array>;
	headers?: Record<string, string>;
}

/** Calls the API's handlers as Kit does: by address, then by method, else the fallback. */
export function apiOf(context: Context, viewer: Viewer = ON_THIS_MACHINE) {
	return async (method: string, address: string, call: Call = {}): Promise<Response> => {
		const url = new URL(address, 'http://localhost:3000');
		const event = { url, request: request(method, url, call), locals: { context, viewer } };
		for (const { expression, names, handlers } of routes) {
			const hit = expression.exec(url.pathname);
			if (!hit) continue;
			const params = Object.fromEntries(
				names.map((name, index) => [name, decodeURIComponent(hit[index + 1] ?? '')])
			);
			const handler = handlers[method] ?? handlers['fallback'];
			if (!handler) throw new Error(`${address} has neither ${method} nor a fallback`);
			return handler({ ...event, params } as unknown as RequestEvent);
		}
		throw new Error(`no route for ${address}`);
	};
}

/** Addresses of the API as its description writes them. */
export const apiAddresses = routes
	.filter(({ hasRest }) => !hasRest)
	.map(({ address, handlers }) => ({
		address,
		methods: Object.keys(handlers).filter((name) => name !== 'fallback')
	}));

function request(method: string, url: URL, { body, text, headers }: Call): Request {
	const content = body === undefined ? text : JSON.stringify(body);
	const type = body === undefined ? 'text/csv' : 'application/json';
	if (content === undefined) return new Request(url, { method, ...(headers ? { headers } : {}) });
	const init = {
		method,
		body: content,
		duplex: 'half',
		headers: { 'content-type': type, ...headers }
	};
	return new Request(url, init as RequestInit);
}

function pattern(file: string) {
	const address = file.replace('/src/routes', '').replace('/+server.ts', '');
	const names = [...address.matchAll(/\[(?:\.\.\.)?(\w+)\]/g)].map((hit) => hit[1] ?? '');
	const source = address
		.replace(/\./g, '\\.')
		.replace(/\/\[\\\.\\\.\\\.\w+\]/g, '(?:/(.*))?')
		.replace(/\[\w+\]/g, '([^/]+)');
	return {
		address: address.replace(/\[(\w+)\]/g, '{$1}'),
		names,
		expression: new RegExp(`^${source}$`),
		hasRest: file.includes('[...')
	};
}
