import type { IncomingMessage } from 'node:http';

/** Where the app reads who asks, unless the settings of its adapter name another header. */
export const ASKER = 'x-forwarded-for';

const THIS_MACHINE = /^(127\.|::1$|::ffff:127\.)/;

interface Connection {
	remoteAddress?: string | undefined;
}

/**
 * The addresses in `X-Forwarded-For` as they can be believed: a proxy on this machine says there who
 * asked it; from anywhere else the header is what the asker likes to write, and the connection's own
 * address stands. With `ADDRESS_HEADER` set, whoever runs the app vouches for the header.
 */
export function whoAsks(
	{ headers, socket }: Pick<IncomingMessage, 'headers'> & { socket: Connection },
	isVouchedFor: boolean
): string {
	const own = socket.remoteAddress ?? '';
	const said = String(headers[ASKER] ?? '');
	const isBelieved = isVouchedFor || THIS_MACHINE.test(own);
	return isBelieved && said.trim() !== '' ? said : own;
}
