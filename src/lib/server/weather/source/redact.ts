const STRUCK = '•••';

/** A text without the key, in whichever way the key may be written in it. */
export function redact(text: string, key: string | null): string {
	if (!key) return text;
	return spellings(key).reduce((left, spelling) => left.replaceAll(spelling, STRUCK), text);
}

/** The same for every text inside of a value. */
export function redactAll<Value>(value: Value, key: string | null): Value;
export function redactAll(value: unknown, key: string | null): unknown {
	if (!key || value instanceof Date) return value;
	if (typeof value === 'string') return redact(value, key);
	if (Array.isArray(value)) return value.map((each) => redactAll<unknown>(each, key));
	if (typeof value !== 'object' || value === null) return value;
	return Object.fromEntries(
		Object.entries(value).map(([name, each]) => [name, redactAll<unknown>(each, key)])
	);
}

/** Longest first, so that no part of one is left standing. */
function spellings(key: string): string[] {
	const encoded = encodeURIComponent(key);
	const form = new URLSearchParams({ k: key }).toString().slice(2);
	const json = JSON.stringify(key).slice(1, -1);
	const base64 = Buffer.from(key).toString('base64');
	const all = [
		key,
		encoded,
		encoded.replace(/%[0-9A-F]{2}/g, (code) => code.toLowerCase()),
		form,
		json,
		json.replaceAll('/', '\\/'),
		encodeURI(key),
		base64,
		base64.replace(/=+$/, '')
	];
	return [...new Set(all)].filter((text) => text !== '').toSorted((a, b) => b.length - a.length);
}
