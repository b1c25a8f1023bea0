type Field = string | number | boolean | null;

/** `FROSTLEDGER_LOG=json`: one line of JSON for each request and event, on standard output. */
export function isLogOfJson(environment: NodeJS.ProcessEnv = process.env): boolean {
	return environment['FROSTLEDGER_LOG']?.trim().toLowerCase() === 'json';
}

/** Notes something that happened; silent unless the log is wanted. Fields never hold a secret. */
export function logEvent(
	event: string,
	fields: Readonly<Record<string, Field>>,
	level: 'info' | 'error' = 'info'
): void {
	if (!isLogOfJson()) return;
	const line = { at: new Date().toISOString(), level, event, ...fields };
	process.stdout.write(`${JSON.stringify(line)}\n`);
}

/** A path, or a text with paths in it, without the secret of a feed, of a helper’s or a guest’s link. */
export function withoutSecrets(text: string): string {
	return text.replace(/(\/(?:feeds|join|look)\/)[^/\s"'`<>)\]]+/g, '$1…');
}

/**
 * A text without what follows the `?` of an address and without the name and password before its
 * host, where keys of services and secret links stand.
 */
export function withoutQueries(text: string): string {
	return text
		.replace(/\?[^\s"'`<>)\]]*=[^\s"'`<>)\]]*/g, '?…')
		.replace(/([a-z][a-z\d+.-]*:\/\/)[^\s/@"'`<>]+@/gi, '$1…@');
}
