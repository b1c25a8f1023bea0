import ipaddr from 'ipaddr.js';

export interface Asker {
	/** An address, or the network of one; never told to anybody and never logged. */
	key: string;
	/** Somebody on this machine, who asked it by a name that means it. */
	isHere: boolean;
}

const UNKNOWN: Asker = { key: 'unknown', isHere: false };
/** A proxy that does not say for whom it asks comes from this machine too, with the public name. */
const THIS_MACHINE = new Set(['localhost', '127.0.0.1', '[::1]']);

/**
 * Who asks, as limits count it. A household or a phone holds a whole /64 of IPv6, so that single
 * addresses of it would be no limit.
 */
export function askerOf(getClientAddress: () => string, hostname: string): Asker {
	const text = addressOf(getClientAddress);
	if (!ipaddr.isValid(text)) return UNKNOWN;
	const address = ipaddr.process(text);
	const isHere = address.range() === 'loopback' && THIS_MACHINE.has(hostname);
	if (address.kind() === 'ipv4') return { key: address.toString(), isHere };
	return { key: address.toByteArray().slice(0, 8).join('.'), isHere };
}

/** The adapter throws where the header that it was set to read is missing. */
function addressOf(getClientAddress: () => string): string {
	try {
		return getClientAddress();
	} catch {
		return '';
	}
}
