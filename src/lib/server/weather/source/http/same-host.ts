/** Headers and keys go to the host that the source names, by http or https at their own ports. */
export function isSameHost(a: URL, b: URL): boolean {
	return a.hostname === b.hostname && a.port === b.port;
}
