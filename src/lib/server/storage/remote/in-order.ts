import { BatchCond, type HttpStream, type InValue, type RowsResult } from '@libsql/hrana-client';

export type Statement = [sql: string, args: InValue[]];

/**
 * Statements in one request, each run only where the one before it went well. Answers as many results.
 * @throws what the first of them that failed was refused with
 */
export async function inOrder(
	stream: HttpStream,
	statements: readonly Statement[]
): Promise<RowsResult[]> {
	const batch = stream.batch();
	let before: ReturnType<typeof batch.step> | null = null;
	const answers = statements.map((statement) => {
		const step = batch.step();
		if (before) step.condition(BatchCond.ok(before));
		before = step;
		return step.query(statement);
	});
	const [, ...results] = await Promise.all([batch.execute(), ...answers]);
	return results.map((result) => {
		if (!result) throw new Error('a statement was left out, and none before it was refused');
		return result;
	});
}
