import { NoSource, type RefreshState } from '#lib/server/services/refresh/refresh-lake.ts';
import { Problem } from '../../../../problem.ts';

/** A refresh that has begun; a lake without a source is a conflict. */
export async function started(start: () => Promise<RefreshState>): Promise<RefreshState> {
	try {
		return await start();
	} catch (cause) {
		if (cause instanceof NoSource) throw new Problem(409, 'Conflict', cause.message);
		throw cause;
	}
}
