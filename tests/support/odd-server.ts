import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';

const MB = 1_000_000;

/** A request as it reached the server. */
export interface Seen {
	url: string;
	headers: IncomingMessage['headers'];
}

/** A real server on this machine that misbehaves in the ways that its paths name. */
export class OddServer {
	readonly seen: Seen[] = [];
	/** What the big answers have unpacked to so far. */
	sentBytes = 0;
	/** What `/hours` answers. */
	answer: unknown = {};
	readonly #server: Server;

	constructor() {
		this.#server = createServer((request, response) => {
			// Its clock is this machine's, and not the test's.
			response.sendDate = false;
			this.seen.push({ url: request.url ?? '', headers: request.headers });
			response.on('error', () => response.destroy());
			void this.#answer(request, response);
		});
	}

	async start(): Promise<void> {
		await new Promise<void>((resolve) => this.#server.listen(0, '127.0.0.1', () => resolve()));
	}

	async stop(): Promise<void> {
		this.#server.closeAllConnections();
		await new Promise<void>((resolve) => this.#server.close(() => resolve()));
	}

	get port(): number {
		const address = this.#server.address() as AddressInfo;
		return address.port;
	}

	/** An address of this server, by the host name that a test asks by. */
	at(path: string, host = '127.0.0.1'): string {
		return `http://${host}:${this.port}${path}`;
	}

	async #answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
		const { pathname, searchParams } = new URL(request.url ?? '/', 'http://odd.example');
		const json = () => response.setHeader('content-type', 'application/json');
		switch (pathname) {
			case '/hours':
				json();
				response.end(JSON.stringify(this.answer));
				return;
			case '/slow':
				json();
				return this.#slowly(response);
			case '/silent':
				return;
			case '/reset':
				response.socket?.resetAndDestroy();
				return;
			case '/reset-midway':
				json();
				response.write('{"time":["2026-01-20T00:00"');
				setTimeout(() => response.socket?.resetAndDestroy(), 30);
				return;
			case '/short':
				response.setHeader('content-length', '5000');
				response.write('{"time":[');
				setTimeout(() => response.socket?.end(), 30);
				return;
			case '/half':
				json();
				response.end(JSON.stringify(this.answer).slice(0, -20));
				return;
			case '/bomb':
				response.setHeader('content-encoding', 'gzip');
				return this.#pour(response, 1000 * MB, createGzip({ level: 1 }));
			case '/not-gzip':
				response.setHeader('content-encoding', 'gzip');
				response.end('{"time":[]}');
				return;
			case '/huge':
				json();
				return this.#pour(response, 1000 * MB, null);
			case '/redirect':
				response.writeHead(302, { location: searchParams.get('to') ?? '' });
				response.end();
				return;
			case '/loop':
				response.writeHead(307, { location: `/loop?n=${Number(searchParams.get('n')) + 1}` });
				response.end();
				return;
			default:
				response.writeHead(404).end();
		}
	}

	/** A byte now and then, for ever. */
	#slowly(response: ServerResponse): void {
		response.write('[');
		const timer = setInterval(() => response.write(' '), 40);
		response.on('close', () => clearInterval(timer));
	}

	/** A list of numbers as long as wanted, made while it is sent. */
	async #pour(
		response: ServerResponse,
		bytes: number,
		packer: ReturnType<typeof createGzip> | null
	): Promise<void> {
		const piece = Buffer.from('0,'.repeat(32_768));
		const count = (sent: number) => {
			this.sentBytes += sent;
		};
		function* pieces() {
			yield Buffer.from('[');
			for (let sent = 0; sent < bytes; sent += piece.byteLength) {
				count(piece.byteLength);
				yield piece;
			}
			yield Buffer.from('0]');
		}
		const source = Readable.from(pieces(), { objectMode: false });
		try {
			if (packer) await pipeline(source, packer, response);
			else await pipeline(source, response);
		} catch {
			// The other side has had enough, as it should.
		}
	}
}
