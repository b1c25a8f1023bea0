interface Addressed {
	address: string;
	first?: readonly { address: string }[] | undefined;
}

/** Hosts that the addresses of calls begin with; one that an answer names stands as it is written. */
export function hostsOfCalls(calls: readonly Addressed[]): string[] {
	const addresses = calls.flatMap(({ address, first = [] }) => [
		...first.map((call) => call.address),
		address
	]);
	return addresses.map((address) => /^[a-z]+:\/\/([^/?#]+)/i.exec(address)?.[1] ?? address);
}
