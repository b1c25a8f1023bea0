import { isIP } from 'node:net';
import { isAllowed, isPublicAddress } from '../../../weather/source/http/address-rules.ts';

/**
 * Why nothing is sent to an address, or `null`. The rules are those of weather services; names are
 * looked up, and judged, when the message is sent.
 */
export function webhookProblem(text: string, allowedHosts: readonly string[]): string | null {
	if (!URL.canParse(text)) return 'must be an address such as https://hooks.example.org/ice';
	const url = new URL(text);
	if (url.protocol !== 'https:' && url.protocol !== 'http:')
		return 'must begin with https:// or http://';
	if (url.username !== '' || url.password !== '')
		return 'must hold no user name and no password: each message is signed instead';
	if (isAllowed(url.hostname, allowedHosts)) return null;
	const literal = url.hostname.replace(/^\[|\]$/g, '');
	const isPrivate = isIP(literal) !== 0 ? !isPublicAddress(literal) : isLocalName(literal);
	return isPrivate ? privateWebhook(url.hostname) : null;
}

/** Names that never lead out of this machine (RFC 6761). */
function isLocalName(name: string): boolean {
	return /(^|\.)localhost\.?$/i.test(name);
}

export function privateWebhook(host: string): string {
	return `must not lead into a private network or to this machine, as ${host} does, unless whoever runs this app names it in FROSTLEDGER_WEBHOOK_HOSTS`;
}
