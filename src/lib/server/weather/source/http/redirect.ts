import { redact } from '../redact.ts';
import { isSameHost } from './same-host.ts';

const REDIRECTS = new Set([301, 302, 303, 307, 308]);

/** Where an answer sends the call on, `null` where it is the answer itself, or why that is refused. */
export function redirectTarget(
	{ status, headers }: Response,
	from: URL,
	homeUrl: URL,
	key: string | null
): URL | string | null {
	const location = headers.get('location');
	if (!REDIRECTS.has(status) || location === null) return null;
	if (!URL.canParse(location, from)) {
		return `${from.hostname} sends the call on to something that is no address; ask its operators, or enter another address.`;
	}
	const target = new URL(location, from);
	if (from.protocol === 'https:' && target.protocol === 'http:') {
		return `${from.hostname} sends the call on from https to plain http, where anyone on the way could change the weather; enter an https address.`;
	}
	if (!isSameHost(target, homeUrl) && redact(target.href, key) !== target.href) {
		return `${from.hostname} sends the call on to ${target.hostname} with the key in it, and the key is kept for ${homeUrl.hostname} only; if the service has moved, enter its new address.`;
	}
	return target;
}
