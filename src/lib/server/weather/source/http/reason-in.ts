const NAMES = ['reason', 'detail', 'message', 'error_description', 'error', 'title', 'description'];
const LONGEST = 160;

/** The sentence in which a service says why it refused, where its body is JSON and has one. */
export function reasonIn(body: Uint8Array): string | null {
	if (body.byteLength === 0 || body.byteLength > 100_000) return null;
	try {
		return find(JSON.parse(new TextDecoder().decode(body)), 0);
	} catch {
		return null;
	}
}

function find(value: unknown, depth: number): string | null {
	if (typeof value !== 'object' || value === null || depth > 2) return null;
	const fields = new Map(Object.entries(value));
	for (const name of NAMES) {
		const text = fields.get(name);
		if (typeof text === 'string' && text.trim() !== '') return shown(text);
	}
	for (const inner of fields.values()) {
		const found = find(inner, depth + 1);
		if (found !== null) return found;
	}
	return null;
}

function shown(text: string): string {
	const line = text.replace(/[\p{C}\s]+/gu, ' ').trim();
	return line.length > LONGEST ? `“${line.slice(0, LONGEST)}…”` : `“${line}”`;
}
