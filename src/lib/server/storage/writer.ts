import { AsyncLocalStorage } from 'node:async_hooks';
import { CompiledQuery, type DatabaseConnection } from 'kysely';

/** Who writes, for the record of changes. */
export interface Writer {
	name: string;
	at: Date;
}

interface Unit extends Writer {
	unit: number;
}

const writers = new AsyncLocalStorage<Unit>();
let last = 0;

/**
 * Puts on record, as one change of one person, what is written within `work`. What nobody in person
 * writes, as the schedule does, is not on record.
 */
export function writingAs<Result>(writer: Writer, work: () => Result): Result {
	// Grows from start to start as well, and by one for each of a moment.
	last = Math.max(last + 1, Date.now() * 1000);
	return writers.run({ ...writer, unit: last }, work);
}

/** Ends that for what goes on by itself afterwards, as a timer that a person's change has set. */
export function writingAsNobody<Result>(work: () => Result): Result {
	return writers.exit(work);
}

/** Of each connection, who was told to it last. */
const told = new WeakMap<DatabaseConnection, Unit>();

/** Tells a connection who writes by it, before it is used. */
export async function tellWriter(connection: DatabaseConnection): Promise<void> {
	const writer = writers.getStore();
	if (told.get(connection) === writer) return;
	const { name, at, unit } = writer ?? { name: null, at: null, unit: 0 };
	await connection.executeQuery(
		CompiledQuery.raw('UPDATE temp.writer SET who = ?, at = ?, unit = ?', [
			name,
			at?.toISOString() ?? null,
			unit
		])
	);
	if (writer) told.set(connection, writer);
	else told.delete(connection);
}
