import type { Context } from '../context.ts';
import { pendingChanges } from '../storage/schema-version.ts';
import { troubleOf } from './storage-trouble.ts';

/** Why the app cannot do its work now, in a sentence; `null` when it can. */
export async function whyNotReady({ db }: Context): Promise<string | null> {
	try {
		const pending = await pendingChanges(db);
		if (pending.length === 0) return null;
		return `The schema of the database is not up to date: ${pending.join(', ')} is to come`;
	} catch (cause) {
		return troubleOf(cause) ?? 'The database does not answer';
	}
}
