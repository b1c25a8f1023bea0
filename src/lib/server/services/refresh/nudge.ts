import type { Context } from '../../context.ts';
import { writingAsNobody } from '../../storage/writer.ts';

/** Of each database, what makes its schedule look at once. */
const nudges = new WeakMap<Context['db'], () => void>();

/** What a person has just set up is looked for at once; does nothing while the schedule is off. */
export function nudgeSchedule({ db }: Context): void {
	writingAsNobody(() => nudges.get(db)?.());
}

/** Lets the schedule of a context be nudged; `null` ends that. */
export function onNudge({ db }: Context, look: (() => void) | null): void {
	if (look) nudges.set(db, look);
	else nudges.delete(db);
}
