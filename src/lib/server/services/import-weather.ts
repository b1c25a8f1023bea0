import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../context.ts';
import { commitStaged, readRevision } from '../storage/weather-commit.ts';
import {
	countReplaced,
	countStaged,
	dropStaged,
	stageDays,
	stageHours,
	summarizeStagedDays
} from '../storage/weather-staging.ts';
import { stagedAt } from '../storage/staging-tables.ts';
import { previewCsv } from '../weather/csv/preview.ts';
import { readCsv } from '../weather/csv/read.ts';
import type { ColumnGuess, CsvOptions, CsvPreview, RowProblem } from '../weather/csv/contract.ts';
import { stageDaysOfHours } from './hourly-days.ts';
import { newId } from './ids.ts';
import { joinChanged } from './joining.ts';
import { latestOf } from './latest.ts';
import { getLake, type LakeRecord } from './lakes.ts';
import { nextTurn } from './next-turn.ts';
import { splitHead } from './split-head.ts';

export type { ColumnGuess, CsvPreview, RowProblem };

export interface ImportReport {
	/** `refused`: nothing of the file can be used; `rejected` says why. */
	status: 'stored' | 'dryRun' | 'refused';
	/** Rows read and taken. */
	accepted: number;
	/** Days or hours of the file that the lake had already; a value in the file replaces the one before. */
	replaced: number;
	/** Days or hours that the file gives more than once; the later one counts. */
	repeated: number;
	/** The first of the rows that could not be read; `rejectedCount` counts all. */
	rejected: RowProblem[];
	rejectedCount: number;
	columns: ColumnGuess[];
	warnings: string[];
	step: 'daily' | 'hourly';
	from: IsoDate | null;
	to: IsoDate | null;
	/** Days between `from` and `to` that have no temperature. */
	gapDays: number;
}

export interface ImportOptions {
	/** Corrections of the guess. */
	columns?: ColumnGuess[];
	/** Reads all and stores nothing. */
	dryRun?: boolean;
}

const LISTED_REJECTIONS = 1000;

/** The guess for each column and the first rows, from the first 64 kB of a file. */
export async function previewWeather(
	ctx: Context,
	lakeId: string,
	head: Uint8Array,
	columns?: ColumnGuess[]
): Promise<CsvPreview> {
	return previewCsv(head, csvOptions(ctx, await getLake(ctx, lakeId), columns));
}

/** Reads a CSV file to its end, then stores what it holds, whole or not at all. */
export async function importWeather(
	ctx: Context,
	lakeId: string,
	stream: AsyncIterable<Uint8Array>,
	{ columns, dryRun = false }: ImportOptions = {}
): Promise<ImportReport> {
	const lake = await getLake(ctx, lakeId);
	const { timeZone } = lake;
	const options = csvOptions(ctx, lake, columns);
	const { head, whole } = await splitHead(stream);
	const preview = previewCsv(head, options);
	if (!preview.ok) return refusal(preview, preview.problems, preview.problems.length);
	const importId = newId(stagedAt(new Date()));
	try {
		const { isFatal, ...read } = await stageFile(ctx.db, importId, whole, options);
		if (isFatal || read.accepted === 0) {
			return refusal(preview, read.rejected, read.rejectedCount);
		}
		const replaced = await finish(ctx.db, { lakeId, importId, timeZone }, dryRun);
		await joinChanged(ctx, lakeId);
		const repeated = read.accepted - (await countStaged(ctx.db, importId));
		const span = await summarizeStagedDays(ctx.db, importId);
		return {
			status: dryRun ? 'dryRun' : 'stored',
			...read,
			replaced,
			repeated,
			...described(preview),
			from: span.from,
			to: span.to,
			gapDays: span.from && span.to ? daysBetween(span.from, span.to) + 1 - span.knownDays : 0
		};
	} finally {
		await dropStaged(ctx.db, importId);
	}
}

/** Forecasts in a file would pass for observed, and for fresh, once their days have come. */
function csvOptions(
	ctx: Context,
	lake: LakeRecord,
	columns: ColumnGuess[] | undefined
): CsvOptions {
	return { timeZone: lake.timeZone, columns, latest: latestOf(ctx, lake) };
}

interface FileRead extends Pick<ImportReport, 'accepted' | 'rejected' | 'rejectedCount'> {
	isFatal: boolean;
}

async function stageFile(
	db: Context['db'],
	importId: string,
	whole: AsyncIterable<Uint8Array>,
	options: CsvOptions
): Promise<FileRead> {
	const read: FileRead = { accepted: 0, rejected: [], rejectedCount: 0, isFatal: false };
	for await (const { days, hours, rejected, isFatal } of readCsv(whole, options)) {
		await stageDays(db, importId, 'daily', days);
		await stageHours(db, importId, hours);
		read.accepted += days.length + hours.length;
		read.rejectedCount += rejected.length;
		// What condemns the whole file is told first.
		if (isFatal) read.rejected.unshift(...rejected.splice(-1));
		const room = Math.max(0, LISTED_REJECTIONS - read.rejected.length);
		read.rejected.push(...rejected.slice(0, room));
		read.isFatal = isFatal;
		await nextTurn();
	}
	return read;
}

/** Builds days from hours and commits, again when another import came between. */
async function finish(
	db: Context['db'],
	target: { lakeId: string; importId: string; timeZone: string },
	dryRun: boolean
): Promise<number> {
	for (;;) {
		const revision = await readRevision(db, target.lakeId);
		await stageDaysOfHours(db, target);
		const replaced = await countReplaced(db, target.lakeId, target.importId);
		if (dryRun || (await commitStaged(db, { ...target, revision }))) return replaced;
	}
}

function described({ columns, warnings, step }: CsvPreview) {
	return { columns, warnings, step };
}

function refusal(preview: CsvPreview, rejected: RowProblem[], rejectedCount: number): ImportReport {
	const nothing = { accepted: 0, replaced: 0, repeated: 0, from: null, to: null, gapDays: 0 };
	return { status: 'refused', ...nothing, ...described(preview), rejected, rejectedCount };
}
