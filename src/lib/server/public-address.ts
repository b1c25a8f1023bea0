type Environment = Readonly<Record<string, string | undefined>>;

/**
 * `FROSTLEDGER_ADDRESS`: where others reach this app, such as `https://ice.example.org`, without a
 * slash at its end; `null` when it is not set.
 * @throws Error in a sentence that names the setting, its value and the remedy.
 */
export function readPublicAddress(environment: Environment): string | null {
	const text = environment['FROSTLEDGER_ADDRESS']?.trim() ?? '';
	if (text === '') return null;
	const refuse = (why: string): never => {
		throw new Error(
			`FROSTLEDGER_ADDRESS is "${text.slice(0, 200)}", but ${why}; write it like https://ice.example.org`
		);
	};
	if (!URL.canParse(text)) return refuse('it is no address');
	const url = new URL(text);
	if (url.protocol !== 'https:' && url.protocol !== 'http:')
		return refuse('only http and https lead here');
	if (url.username !== '' || url.password !== '') return refuse('it holds a user name or password');
	if (url.pathname !== '/' || url.search !== '' || url.hash !== '')
		return refuse('the app answers at the top of a host name and not below it');
	return url.origin;
}

/** `FROSTLEDGER_WEBHOOK_HOSTS`: names in a private network that webhooks may be sent to. */
export function readWebhookHosts(environment: Environment): string[] {
	return (environment['FROSTLEDGER_WEBHOOK_HOSTS'] ?? '')
		.split(/[\s,]+/)
		.filter((name) => name !== '')
		.map((name) => name.toLowerCase());
}

/** What of the settings lets others than this machine in, in words; `null` when nothing does. */
export function whyReachable(environment: Environment): string | null {
	const address = readPublicAddress(environment);
	const host = environment['HOST']?.trim() || '127.0.0.1';
	if (!isLoopback(host)) return `HOST is "${host}"`;
	// A proxy on this machine reaches it on loopback, and lets anybody in who knows its name.
	if (address !== null && !isLoopback(new URL(address).hostname))
		return `FROSTLEDGER_ADDRESS is "${address}"`;
	const names = (environment['FROSTLEDGER_HOSTS'] ?? '').split(/[\s,]+/).filter(Boolean);
	const other = names.find((name) => !isLoopback(name));
	return other === undefined ? null : `FROSTLEDGER_HOSTS names "${other}"`;
}

/** Whether a host can be reached from this machine alone. */
export function isLoopback(host: string): boolean {
	const name = host.toLowerCase().replace(/^\[|\]$/g, '');
	const isName = name === 'localhost' || name.endsWith('.localhost');
	return isName || name === '::1' || /^(::ffff:)?127\.\d+\.\d+\.\d+$/.test(name);
}
