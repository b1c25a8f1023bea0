import { setImmediate as nextTurn } from 'node:timers/promises';
import type { CsvBatch, CsvOptions, RowProblem } from './contract.ts';
import { HEAD_BYTES } from './head.ts';
import { LineEnds } from './line-ends.ts';
import type { CsvPlan } from './plan.ts';
import { RecordReader, type Parsed } from './records.ts';
import { RowReader } from './row-reader.ts';
import { tryCsv } from './trial.ts';

const BATCH_ROWS = 500;
/** A record with steps of six hours gives six hours a row. */
const ROOM_FOR_ONE_ROW = 6;

/**
 * The days or hours of a CSV file in batches, as the preview of its head showed them. Content that
 * can't be used comes as rejected lines; where the last batch is fatal, none of the file counts.
 */
export async function* readCsv(
	bytes: AsyncIterable<Uint8Array>,
	options: CsvOptions
): AsyncGenerator<CsvBatch> {
	const source = pieces(bytes);
	try {
		const { head, first } = await takeHead(source);
		const { plan, problems } = tryCsv(head, options);
		const bytesRead = first.reduce((sum, piece) => sum + piece.byteLength, 0);
		if (plan) yield* readRows(plan, first, source, options);
		else yield { days: [], hours: [], rejected: problems, bytesRead, isFatal: true };
	} finally {
		await source.return(undefined);
	}
}

async function* readRows(
	plan: CsvPlan,
	first: readonly Uint8Array[],
	rest: AsyncIterable<Uint8Array>,
	options: CsvOptions
): AsyncGenerator<CsvBatch> {
	const reader = new RowReader(plan, options);
	const records = new RecordReader(plan.delimiter, plan.layout.firstRowLine);
	const toRows = rowText(plan);
	let bytesRead = 0;
	for await (const piece of chain(first, rest)) {
		bytesRead += piece.byteLength;
		yield* batches(reader, await records.push(toRows(piece)), bytesRead);
		if (reader.fatal) return;
		await nextTurn();
	}
	const last = await records.push(toRows(null));
	const end = last.failure ? last : joined(last, await records.end());
	yield* batches(reader, end, bytesRead);
	if (reader.fatal) return;
	reader.finish();
	yield batchOf(reader, bytesRead);
}

async function* batches(
	reader: RowReader,
	{ records, failure }: Parsed,
	bytesRead: number
): AsyncGenerator<CsvBatch> {
	for (const record of records) {
		reader.take(record);
		if (reader.fatal) break;
		if (reader.pending <= BATCH_ROWS - ROOM_FOR_ONE_ROW) continue;
		yield batchOf(reader, bytesRead);
		await nextTurn();
	}
	reader.fatal ??= failure;
	if (reader.fatal) yield batchOf(reader, bytesRead);
}

function batchOf(reader: RowReader, bytesRead: number): CsvBatch {
	const { days, hours, rejected } = reader.drain();
	const fatal: RowProblem[] = reader.fatal ? [reader.fatal] : [];
	return {
		days,
		hours,
		rejected: [...rejected, ...fatal],
		bytesRead,
		isFatal: reader.fatal !== null
	};
}

function joined(a: Parsed, b: Parsed): Parsed {
	return { records: [...a.records, ...b.records], failure: b.failure };
}

/** The decoded text from the first row on, line ends as LF; `null` ends the file. */
function rowText(plan: CsvPlan): (piece: Uint8Array | null) => string {
	const decoder = new TextDecoder(plan.encoding);
	const lineEnds = new LineEnds();
	let toSkip = plan.layout.firstRowLine - 1;
	return (piece) => {
		const decoded = piece ? decoder.decode(piece, { stream: true }) : decoder.decode();
		let text = lineEnds.push(decoded);
		while (toSkip > 0 && text !== '') {
			const end = text.indexOf('\n');
			text = end < 0 ? '' : text.slice(end + 1);
			if (end >= 0) toSkip -= 1;
		}
		return text;
	};
}

async function takeHead(
	source: AsyncGenerator<Uint8Array>
): Promise<{ head: Uint8Array; first: Uint8Array[] }> {
	const first: Uint8Array[] = [];
	let size = 0;
	while (size < HEAD_BYTES) {
		const { value, done } = await source.next();
		if (done) break;
		first.push(value);
		size += value.byteLength;
	}
	return { head: Buffer.concat(first), first };
}

async function* chain(
	first: readonly Uint8Array[],
	rest: AsyncIterable<Uint8Array>
): AsyncGenerator<Uint8Array> {
	yield* first;
	yield* rest;
}

/** A file that comes in one piece is cut, so that other work gets its turn in between. */
async function* pieces(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array, undefined> {
	for await (const chunk of bytes) {
		for (let start = 0; start < chunk.byteLength; start += HEAD_BYTES) {
			yield chunk.subarray(start, start + HEAD_BYTES);
		}
	}
	return undefined;
}
