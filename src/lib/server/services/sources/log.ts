import type { Context } from '../../context.ts';
import { listLogEntries, type FetchLogRow } from '../../storage/fetch-log.ts';
import { listLakes } from '../lakes.ts';
import { listSources } from './sources.ts';

/** One asking of a source, and how it went. */
export interface LogEntry {
	id: number;
	at: Date;
	source: string;
	sourceName: string;
	lake: string | null;
	lakeName: string | null;
	part: 'history' | 'forecast';
	/** `notAsked`: a limit or a wait stood in the way. */
	outcome: FetchLogRow['outcome'];
	/** Hours and days stored. */
	stored: number;
	calls: number;
	bytes: number;
	duration_ms: number;
	/** What was wrong, each a sentence with what to do. */
	faults: { code: string; text: string }[];
}

export interface LogFilter {
	source?: string;
	lake?: string;
	onlyFaults?: boolean;
	limit?: number;
}

const USUAL_LIMIT = 100;

/** The log, newest first. */
export async function listLog(ctx: Context, filter: LogFilter = {}): Promise<LogEntry[]> {
	const { source, lake, onlyFaults = false, limit = USUAL_LIMIT } = filter;
	const rows = await listLogEntries(ctx.db, {
		...(source === undefined ? {} : { sourceId: source }),
		...(lake === undefined ? {} : { lakeId: lake }),
		onlyFaults,
		limit
	});
	const sources = new Map((await listSources(ctx)).map(({ id, name }) => [id, name]));
	const lakes = new Map((await listLakes(ctx)).map(({ id, name }) => [id, name]));
	return rows.map(({ source_id, lake_id, at, faults, ...same }) => ({
		...same,
		at: new Date(at),
		source: source_id,
		sourceName: sources.get(source_id) ?? source_id,
		lake: lake_id,
		lakeName: lake_id === null ? null : (lakes.get(lake_id) ?? lake_id),
		faults: JSON.parse(faults) as LogEntry['faults']
	}));
}
