import type { WeatherSource } from '../../weather/source/contract.ts';

/** Hosts that a source's addresses begin with; `{next}` for one that an answer names. */
export function hostsOf({ calls }: WeatherSource): string[] {
	const addresses = calls.flatMap(({ address, first = [] }) => [
		...first.map((call) => call.address),
		address
	]);
	return addresses.map((address) => /^[a-z]+:\/\/([^/?#]+)/i.exec(address)?.[1] ?? address);
}
