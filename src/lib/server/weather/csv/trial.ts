import type { CsvOptions } from './contract.ts';
import { planCsv, type PlanAttempt } from './plan.ts';
import { RowReader } from './row-reader.ts';

/** A plan that was tried on the rows of the head, so that a preview finds what an import would. */
export function tryCsv(bytes: Uint8Array, options: CsvOptions): PlanAttempt {
	const attempt = planCsv(bytes, options);
	const { plan, head } = attempt;
	if (!plan) return attempt;
	const reader = new RowReader(plan, options);
	for (const record of plan.layout.rows) reader.take(record);
	if (!head.isCut) reader.finish();
	const problem = reader.fatal ?? (head.isCut ? reader.nothingUsable() : null);
	if (problem) return { ...attempt, plan: null, problems: [problem] };
	const { rejected } = reader.drain();
	const [first] = rejected;
	if (!first) return attempt;
	const where = head.isCut ? ' in the first 64 kB' : '';
	const some = rejected.length === 1 ? 'one note on a line' : `${rejected.length} notes on lines`;
	const warning = `${some}${where}; line ${first.line}: ${first.reason}`;
	return { ...attempt, warnings: [...attempt.warnings, warning] };
}
