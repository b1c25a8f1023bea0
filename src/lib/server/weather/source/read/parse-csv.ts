import { chooseDelimiter } from '../../csv/delimiter.ts';
import { foreignContent } from '../../csv/foreign.ts';
import { findLayout } from '../../csv/layout.ts';
import type { Fault } from '../contract.ts';

export interface CsvTable {
	header: readonly string[];
	rows: readonly (readonly string[])[];
}

export type ParsedCsv = { table: CsvTable; fault: null } | { table: null; fault: Fault };

/** The table of an answer in CSV, notes above its headings left out, or what came instead. */
export function parseCsv(bytes: Uint8Array, text: string, host: string): ParsedCsv {
	if (text.trim() === '')
		return failed(
			'empty',
			`${host} answered with nothing at all; check the address and the dates that it asks for.`
		);
	const foreign = foreignContent(bytes, text.slice(0, 65_536));
	if (foreign)
		return failed('notJson', `${host} answered with something else than CSV: ${foreign}.`);
	const reading = chooseDelimiter(text.replace(/\r\n?/g, '\n'), null);
	if (reading.failure) {
		const { line, reason } = reading.failure;
		return failed(
			'truncated',
			`The CSV of ${host} can not be read on from line ${line}: ${reason}.`
		);
	}
	if (reading.width < 2)
		return failed('notJson', `${host} answered with text that has no columns; check the address.`);
	const { header, headerLine, rows } = findLayout(reading);
	if (headerLine === 0)
		return failed(
			'badMapping',
			`The CSV of ${host} has no line of headings to find columns by; ask it for one.`
		);
	return { table: { header, rows: rows.map(({ cells }) => cells) }, fault: null };
}

function failed(code: Fault['code'], text: string): ParsedCsv {
	return { table: null, fault: { code, text } };
}
