import type { Fault } from '../contract.ts';
import type { Mapping } from '../schema.ts';
import type { Answer } from './columns.ts';
import { decode } from './decode.ts';
import { mapAnswer } from './map-answer.ts';
import type { Mapped, Place } from './mapped.ts';
import { parseCsv } from './parse-csv.ts';
import { parseJson } from './parse-json.ts';

/** The content of an answer, or what came instead. */
export function contentOf(
	body: Uint8Array,
	format: 'json' | 'csv',
	host: string
): { content: Answer; fault: null } | { content: null; fault: Fault } {
	const text = decode(body);
	if (format === 'csv') {
		const { table, fault } = parseCsv(body, text, host);
		return fault ? { content: null, fault } : { content: { json: null, table }, fault };
	}
	const { json, fault } = parseJson(text, host);
	return fault ? { content: null, fault } : { content: { json, table: null }, fault };
}

/** What a body says by a mapping, or why it says nothing. */
export async function understand(
	body: Uint8Array,
	format: 'json' | 'csv',
	host: string,
	mapping: Mapping,
	place: Place
): Promise<{ mapped: Mapped; fault: null } | { mapped: null; fault: Fault }> {
	const { content, fault } = contentOf(body, format, host);
	if (fault) return { mapped: null, fault };
	return { mapped: await mapAnswer(mapping, content, place), fault: null };
}
