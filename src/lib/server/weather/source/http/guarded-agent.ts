import { lookup as systemLookup, type LookupAddress } from 'node:dns';
import type { LookupFunction } from 'node:net';
import { Agent } from 'undici';
import { isAllowed, isPublicAddress, privateHost } from './address-rules.ts';

/** A name led to an address that is not called. */
export class AddressRefused extends Error {
	override readonly name = 'AddressRefused';
}

export type Resolve = (
	hostname: string,
	done: (error: Error | null, addresses: LookupAddress[]) => void
) => void;

const resolveAll: Resolve = (hostname, done) => {
	systemLookup(hostname, { all: true }, (error, addresses) => done(error, addresses ?? []));
};

/**
 * Connections to public addresses only. The connection goes to the very address that was looked at,
 * so a name can not answer one thing to the check and another to the call.
 */
export function guardedAgent(
	allowedHosts: readonly string[],
	timeOut_ms: number,
	resolve: Resolve = resolveAll
): Agent {
	return new Agent({
		connect: { lookup: guardedLookup(allowedHosts, resolve), timeout: timeOut_ms },
		headersTimeout: timeOut_ms,
		bodyTimeout: timeOut_ms,
		pipelining: 1
	});
}

export function guardedLookup(allowedHosts: readonly string[], resolve: Resolve): LookupFunction {
	return (hostname, options, callback) => {
		resolve(hostname, (error, addresses) => {
			const [first] = addresses;
			if (error || !first) return callback(error ?? new Error(`no address for ${hostname}`), []);
			if (!isAllowed(hostname, allowedHosts)) {
				const isPublic = addresses.every(({ address }) => isPublicAddress(address));
				if (!isPublic) return callback(new AddressRefused(privateHost(hostname)), []);
			}
			if (options.all) callback(null, addresses);
			else callback(null, first.address, first.family);
		});
	};
}
