import compression from 'compression';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { notFound, refuseHost } from './refusals.ts';
import { logWhenDone } from './request-log.ts';
import type { ServerSettings } from './settings.ts';
import { ASKER, whoAsks } from './who-asks.ts';

type Handler = (request: IncomingMessage, response: ServerResponse, next: () => void) => void;

/** A year of measurements by the minute is about 30 MB as CSV; this leaves room. */
const BODY_LIMIT = '256M';
const OWN_NAMES = ['localhost', '127.0.0.1', '[::1]'];

/**
 * Listens with the built app behind it.
 * @throws Error in a sentence when the port is taken or the host is not this machine's.
 */
export async function serve(settings: ServerSettings): Promise<Server> {
	const isVouchedFor = Boolean(process.env.ADDRESS_HEADER);
	const app = await loadApp();
	const compress = compression() as unknown as Handler;
	const server = createServer((request, response) => {
		logWhenDone(request, response);
		// While it stops, a connection that is kept would hold it up.
		if (!server.listening) response.setHeader('connection', 'close');
		if (!isAllowedHost(request.headers.host, settings.hosts)) return refuseHost(request, response);
		beforeTheApp(request, response, isVouchedFor);
		compress(request, response, () => app(request, response, () => notFound(request, response)));
	});
	await listen(server, settings);
	return server;
}

/** For files as they lie there, too, which the app's own hooks do not see; pages have more. */
const ALWAYS = {
	'x-content-type-options': 'nosniff',
	'cross-origin-resource-policy': 'same-origin'
};

/** Pictures and workers. Not for pages: a page found unchanged would be told another policy than its own. */
const FILES = /^\/(_app\/|[^/]+\.(js|svg|png|webmanifest)$)/;
const FILE_POLICY =
	"default-src 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none'";

function beforeTheApp(
	request: IncomingMessage,
	response: ServerResponse,
	isVouchedFor: boolean
): void {
	const { headers, url = '' } = request;
	// Kit takes an unmarked request for https, and would then refuse every form.
	const [protocol] = String(headers['x-forwarded-proto'] ?? '').split(',');
	headers['x-forwarded-proto'] = protocol?.trim().toLowerCase() === 'https' ? 'https' : 'http';
	headers[ASKER] = whoAsks(request, isVouchedFor);
	for (const [name, value] of Object.entries(ALWAYS)) response.setHeader(name, value);
	if (FILES.test(url)) response.setHeader('content-security-policy', FILE_POLICY);
}

async function loadApp(): Promise<Handler> {
	process.env.PROTOCOL_HEADER ??= 'x-forwarded-proto';
	process.env.BODY_SIZE_LIMIT ??= BODY_LIMIT;
	process.env.ADDRESS_HEADER ??= ASKER;
	const built = (await import(pathToFileURL(resolve('build/handler.js')).href)) as {
		handler: Handler;
	};
	return built.handler;
}

/**
 * A page elsewhere can point its own name at this machine and read what it finds (DNS
 * rebinding), so only names that belong here are answered.
 */
export function isAllowedHost(header: string | undefined, extra: readonly string[]): boolean {
	const name = header?.toLowerCase().replace(/:\d+$/, '');
	return name !== undefined && (OWN_NAMES.includes(name) || extra.includes(name));
}

function listen(server: Server, { port, host }: ServerSettings): Promise<void> {
	return new Promise((done, fail) => {
		server.once('error', (cause: NodeJS.ErrnoException) => fail(explain(cause, port, host)));
		server.listen(port, host, done);
	});
}

function explain(cause: NodeJS.ErrnoException, port: number, host: string): Error {
	if (cause.code === 'EADDRINUSE') {
		return new Error(
			`port ${port} is taken; stop what uses it, or choose another: PORT=3001 npm start`
		);
	}
	if (cause.code === 'EACCES') {
		return new Error(
			`port ${port} may not be used by this account; choose one above 1023 with PORT`
		);
	}
	if (cause.code === 'EADDRNOTAVAIL' || cause.code === 'ENOTFOUND') {
		return new Error(`HOST is "${host}", which is not an address of this machine`);
	}
	return cause;
}
