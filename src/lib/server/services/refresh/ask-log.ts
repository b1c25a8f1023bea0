import type { Context } from '../../context.ts';
import { addLogEntry } from '../../storage/fetch-log.ts';
import { refetchable } from '../../storage/refetchable.ts';
import type { Fault, SourceAnswer, SourcePart } from '../../weather/source/contract.ts';
import type { Refusal } from './allowance.ts';
import type { Asking } from './asking.ts';

/** Logs that a limit, a wait or an answer that still holds stood in the way. */
export function logNotAsked(
	ctx: Context,
	asking: Asking,
	part: SourcePart,
	{ text }: Refusal
): Promise<void> {
	return logAsked(ctx, asking, part, { outcome: 'notAsked', faults: [{ code: 'tooMany', text }] });
}

interface Entry {
	outcome: SourceAnswer['outcome'] | 'notAsked';
	faults: readonly Pick<Fault, 'code' | 'text'>[];
	stored?: number;
	calls?: number;
	bytes?: number;
	duration_ms?: number;
}

/** Logs one asking and how it went. */
export async function logAsked(
	ctx: Context,
	{ use }: Asking,
	part: SourcePart,
	{ outcome, faults, stored = 0, calls = 0, bytes = 0, duration_ms = 0 }: Entry
): Promise<void> {
	const entry = {
		source_id: use.source_id,
		lake_id: use.lake_id,
		at: ctx.now().toISOString(),
		part,
		outcome,
		stored,
		calls,
		bytes,
		duration_ms,
		faults: JSON.stringify(faults.map(({ code, text }) => ({ code, text })))
	};
	await refetchable(ctx.db, (db) => addLogEntry(db, entry));
}
