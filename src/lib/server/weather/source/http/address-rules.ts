import ipaddr from 'ipaddr.js';

/** Global unicast: everything else of IPv6 is a local, mapped, tunnelled or reserved address. */
const GLOBAL_IPV6 = ipaddr.IPv6.parseCIDR('2000::/3');

/** True for an address that any machine of the internet may have, and no neighbour of this one has. */
export function isPublicAddress(text: string): boolean {
	if (!ipaddr.isValid(text)) return false;
	const address = ipaddr.process(text);
	if (address.range() !== 'unicast') return false;
	return address.kind() === 'ipv4' || address.match(GLOBAL_IPV6);
}

/**
 * Why an address is not called, or `null`. Names are looked up later; here stands what the address
 * says itself. The URL parser has already written out decimal, octal and shortened forms.
 */
export function addressProblem(url: URL, allowedHosts: readonly string[]): string | null {
	if (url.protocol !== 'https:' && url.protocol !== 'http:') {
		return `Only http and https are called, not ${url.protocol.slice(0, 20)}; correct the address.`;
	}
	if (url.username !== '' || url.password !== '') {
		return 'The address holds a user name or password; put {key} where the key goes instead.';
	}
	if (isAllowed(url.hostname, allowedHosts)) return null;
	const literal = url.hostname.replace(/^\[|\]$/g, '');
	return ipaddr.isValid(literal) && !isPublicAddress(literal) ? privateHost(url.hostname) : null;
}

/** True for a host that the operator named, its port aside. */
export function isAllowed(hostname: string, allowedHosts: readonly string[]): boolean {
	const plain = (name: string) => name.toLowerCase().replace(/^\[|\]$|\.$/g, '');
	return allowedHosts.some((allowed) => plain(allowed) === plain(hostname));
}

export function privateHost(hostname: string): string {
	return (
		`${hostname} lies in a private network or on this machine, and such addresses are not called; ` +
		'if it is your own weather station, name it in FROSTLEDGER_SOURCE_HOSTS.'
	);
}
