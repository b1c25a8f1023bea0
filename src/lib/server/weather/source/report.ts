import type { z } from 'zod';

/** What a rule says of a value: nothing, or one sentence or several. */
export function report<Value>(rule: (value: Value) => string | readonly string[] | null) {
	return (value: Value, context: z.RefinementCtx): void => {
		const found = rule(value) ?? [];
		for (const message of typeof found === 'string' ? [found] : found) {
			context.addIssue({ code: 'custom', message });
		}
	};
}
