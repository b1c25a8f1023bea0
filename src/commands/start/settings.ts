import { isIP } from 'node:net';
import { readPublicAddress } from '#lib/server/public-address.ts';

export interface ServerSettings {
	port: number;
	host: string;
	/** Host names that requests may be addressed to, besides this machine's own. */
	hosts: readonly string[];
}

/**
 * Reads `PORT`, `HOST`, `FROSTLEDGER_HOSTS`, and `FROSTLEDGER_ADDRESS` for its host name.
 * @throws Error in a sentence that names the setting, its value and the remedy.
 */
export function readSettings(environment: NodeJS.ProcessEnv): ServerSettings {
	const portText = environment.PORT?.trim() || '3000';
	const port = Number(portText);
	if (!/^\d+$/.test(portText) || port > 65_535) {
		throw new Error(`PORT is "${portText}", but a port is a number from 1 to 65535`);
	}
	const host = environment.HOST?.trim() || '127.0.0.1';
	if (isIP(host) === 0 && !/^[a-z\d]([a-z\d.-]*[a-z\d])?$/i.test(host)) {
		throw new Error(`HOST is "${host}", but it must be an address of this machine, as 127.0.0.1`);
	}
	const hosts = (environment.FROSTLEDGER_HOSTS ?? '')
		.split(/[\s,]+/)
		.filter((name) => name !== '')
		.map((name) => name.toLowerCase());
	const address = readPublicAddress(environment);
	return { port, host, hosts: address ? [...hosts, new URL(address).hostname] : hosts };
}
