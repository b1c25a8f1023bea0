import type {
	CsvOptions,
	ObservedDay,
	ObservedHour,
	RowProblem
} from '#lib/server/weather/csv/contract.ts';
import { readCsv } from '#lib/server/weather/csv/read.ts';

export interface ReadAll {
	days: ObservedDay[];
	hours: ObservedHour[];
	rejected: RowProblem[];
	isFatal: boolean;
	bytesRead: number;
	largestBatch: number;
	batches: number;
}

export const HERE: CsvOptions = { timeZone: 'America/Chicago' };

/** Reads a file to its end, cut into pieces of this size; later rows replace earlier ones. */
export async function readAll(
	content: string | Uint8Array,
	options: CsvOptions = HERE,
	pieceSize = 10_000
): Promise<ReadAll> {
	const days = new Map<string, ObservedDay>();
	const hours = new Map<number, ObservedHour>();
	const all = {
		rejected: [] as RowProblem[],
		isFatal: false,
		bytesRead: 0,
		largestBatch: 0,
		batches: 0
	};
	for await (const batch of readCsv(pieces(toBytes(content), pieceSize), options)) {
		for (const day of batch.days) days.set(day.on, day);
		for (const hour of batch.hours) hours.set(hour.at_s, hour);
		all.rejected.push(...batch.rejected);
		all.isFatal = batch.isFatal;
		all.bytesRead = batch.bytesRead;
		all.batches += 1;
		all.largestBatch = Math.max(all.largestBatch, batch.days.length + batch.hours.length);
	}
	return { days: [...days.values()], hours: [...hours.values()], ...all };
}

export function toBytes(content: string | Uint8Array): Uint8Array {
	return typeof content === 'string' ? new TextEncoder().encode(content) : content;
}

export async function* pieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
	for (let start = 0; start < bytes.length; start += size)
		yield bytes.subarray(start, start + size);
}

/** @example lines('date,temp_c', '2024-01-01,-5') // => one text with line ends */
export function lines(...rows: readonly string[]): string {
	return `${rows.join('\n')}\n`;
}

/** Rows of this many days from 1 January 2024, each made from its day and number. */
export function daily(count: number, row: (on: string, index: number) => string): string[] {
	return Array.from({ length: count }, (_, index) => row(dayOf2024(index), index));
}

function dayOf2024(index: number): string {
	return new Date(Date.UTC(2024, 0, 1 + index)).toISOString().slice(0, 10);
}
