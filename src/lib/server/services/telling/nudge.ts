import type { Context } from '../../context.ts';
import { writingAsNobody } from '../../storage/writer.ts';

type Look = (lakeId: string) => void;

/** Of each database, what makes its telling look at a lake soon. */
const nudges = new WeakMap<Context['db'], Look>();

/** Something has changed of a lake; does nothing while nobody tells. */
export function nudgeTelling({ db }: Context, lakeId: string): void {
	writingAsNobody(() => nudges.get(db)?.(lakeId));
}

/** Lets the telling of a context be nudged; `null` ends that. */
export function onTellingNudge({ db }: Context, look: Look | null): void {
	if (look) nudges.set(db, look);
	else nudges.delete(db);
}
