import type { Context } from '../context.ts';
import { readRevision } from '../storage/weather-commit.ts';
import type { LakeView } from './lake-view.ts';
import { nextTurn } from './next-turn.ts';
import { keptUp } from './refresh/kept-up.ts';

/** A view that was answered, and what people had made of it. */
interface Published {
	view: LakeView;
	made: string;
	at_ms: number;
}

/** Views that are kept to stand in; each shares its half megabyte with the kept outlooks. */
const KEPT = 120;
/** An older one stands in for nothing: its ages would be wrong. */
const LONGEST_MS = 5 * 60_000;

const published = new WeakMap<Context['db'], Map<string, Published>>();

/**
 * The view that is being made; while the schedule brings the lake new weather and the estimate is not
 * made of it yet, the one that stood before. What a person changes is never answered by an older view.
 */
export async function publishedView(
	ctx: Context,
	key: string,
	known: Omit<LakeView, 'status' | 'outlook'>,
	make: (isQuiet: boolean) => Promise<LakeView>
): Promise<LakeView> {
	const views = published.get(ctx.db) ?? new Map<string, Published>();
	published.set(ctx.db, views);
	const made = await madeByPeople(ctx, known);
	const now_ms = ctx.now().getTime();
	const before = views.get(key);
	const age_ms = before ? now_ms - before.at_ms : Infinity;
	// The clock may have been set back since: then nobody knows how old it is.
	const mayStand = before?.made === made && age_ms >= 0 && age_ms < LONGEST_MS;
	const state = mayStand ? keptUp(ctx, known.lake.id) : 'settled';
	// More is about to come in: an estimate of the half of it would be made for nothing.
	if (before && state === 'changing') return standIn(before);
	const done = make(state === 'changed').then((view) => {
		keep(views, key, { view, made, at_ms: now_ms });
		return view;
	});
	if (!before || state === 'settled') return done;
	done.catch(() => undefined);
	return Promise.race([done, nextTurn().then(() => standIn(before))]);
}

function standIn({ view }: Published): LakeView {
	return { ...view, standsIn: true };
}

/** All but the weather, which is told by the revision that imports and orders of trust count up. */
async function madeByPeople(
	{ db }: Context,
	{
		lake,
		site,
		winter,
		today,
		record,
		readings,
		loads,
		shown
	}: Omit<LakeView, 'status' | 'outlook'>
): Promise<string> {
	const revision = await readRevision(db, lake.id);
	return JSON.stringify([lake, site, winter, today, record, readings, loads, shown, revision]);
}

function keep(views: Map<string, Published>, key: string, view: Published): void {
	views.delete(key);
	views.set(key, view);
	const [oldest] = views.keys();
	if (views.size > KEPT && oldest !== undefined) views.delete(oldest);
}
