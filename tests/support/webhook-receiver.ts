import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface Received {
	method: string;
	url: string;
	headers: IncomingMessage['headers'];
	body: string;
}

export type Reply = (response: ServerResponse, received: Received) => void;

/** A real server on this machine that takes what it is sent. */
export interface Receiver {
	received: Received[];
	/** How it answers; 204 unless told otherwise. */
	reply: Reply;
	/** Its address by a host name. */
	at(host?: string): string;
	stop(): Promise<void>;
}

export async function startReceiver(): Promise<Receiver> {
	const server = createServer((request, response) => {
		const pieces: Buffer[] = [];
		request.on('data', (piece: Buffer) => pieces.push(piece));
		request.on('end', () => {
			const { method = '', url = '', headers } = request;
			const received = { method, url, headers, body: Buffer.concat(pieces).toString('utf8') };
			receiver.received.push(received);
			receiver.reply(response, received);
		});
		response.on('error', () => response.destroy());
	});
	await new Promise<void>((done) => server.listen(0, '127.0.0.1', () => done()));
	const { port } = server.address() as AddressInfo;
	const receiver: Receiver = {
		received: [],
		reply: (response) => response.writeHead(204).end(),
		at: (host = '127.0.0.1') => `http://${host}:${port}/ice?room=7`,
		async stop() {
			server.closeAllConnections();
			await new Promise<void>((done) => server.close(() => done()));
		}
	};
	return receiver;
}

/** Answers with a status and nothing else. */
export function answering(status: number, headers: Record<string, string> = {}): Reply {
	return (response) => void response.writeHead(status, headers).end();
}
