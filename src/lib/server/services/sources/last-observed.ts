import type { Context } from '../../context.ts';
import { readLastHours, readLastSourceDays } from '../../storage/source-weather.ts';
import { daySpan } from '../local-day.ts';

/** The end of the last hour or day with a temperature that each use of a source has brought. */
export async function lastObservedOf(
	{ db }: Context,
	timeZone: string,
	lakeSourceIds: readonly number[]
): Promise<Map<number, Date>> {
	const ends = new Map<number, number>(await readLastHours(db, lakeSourceIds));
	for (const [id, on] of await readLastSourceDays(db, lakeSourceIds)) {
		ends.set(id, Math.max(ends.get(id) ?? 0, daySpan(on, timeZone).end_s));
	}
	return new Map([...ends].map(([id, end_s]) => [id, new Date(end_s * 1000)]));
}
