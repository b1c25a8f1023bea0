const SIGNATURES: readonly [bytes: readonly number[], what: string][] = [
	[[0x50, 0x4b, 0x03, 0x04], 'an Excel workbook or a zip archive'],
	[[0xd0, 0xcf, 0x11, 0xe0], 'an old Excel or Word file'],
	[[0x25, 0x50, 0x44, 0x46], 'a PDF'],
	[[0x1f, 0x8b], 'a gzip archive'],
	[[0x89, 0x50, 0x4e, 0x47], 'a picture'],
	[[0xff, 0xd8, 0xff], 'a picture'],
	[[0x89, 0x48, 0x44, 0x46], 'a NetCDF or HDF file'],
	[[0x43, 0x44, 0x46, 0x01], 'a NetCDF or HDF file'],
	[[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], 'a database'],
	[[0x50, 0x41, 0x52, 0x31], 'a Parquet file']
];

const BINARY_SHARE = 0.01;

/** Why this is no table of text at all, or `null` when it may be one. */
export function foreignContent(head: Uint8Array, text: string): string | null {
	const signature = SIGNATURES.find(([bytes]) => bytes.every((byte, at) => head[at] === byte));
	if (signature) return `this is ${signature[1]}, not a table of text; save it as CSV first`;
	if (isBinary(text)) {
		return 'this is a binary file, not a table of text; export the record as CSV first';
	}
	const start = text.trimStart().slice(0, 200).toLowerCase();
	if (start === '') return 'the file is empty; choose a file with a heading line and weather rows';
	if (start.startsWith('<')) {
		return start.startsWith('<?xml')
			? 'this is XML, not a table; download the record as CSV'
			: 'this is a web page (HTML), not a table; download the CSV itself, perhaps after signing in there';
	}
	if (/^(\{|\[\s*[[{"])/.test(start)) return 'this is JSON, not a table; ask the service for CSV';
	return null;
}

function isBinary(text: string): boolean {
	let odd = 0;
	for (let at = 0; at < text.length; at += 1) {
		const code = text.charCodeAt(at);
		if (code === 0) odd += 1;
		else if (code < 32 && code !== 9 && code !== 10 && code !== 13) odd += 1;
	}
	return odd > text.length * BINARY_SHARE;
}
