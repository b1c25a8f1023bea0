import type { Context } from '../../context.ts';

/** How long after the schedule has changed a lake's weather its estimate may still be in the making. */
const IN_THE_MAKING_MS = 60_000;

interface Change {
	/** When the schedule began to change it, then when it ended. */
	at_ms: number;
	isOver: boolean;
}

/** Of each database, the lakes whose weather the schedule has changed. */
const changes = new WeakMap<Context['db'], Map<string, Change>>();

/** Notes that the schedule, and no person, changes a lake's weather from now on. */
export function beginKeepingUp({ db, now }: Context, lakeId: string): void {
	const ofDatabase = changes.get(db) ?? new Map<string, Change>();
	changes.set(db, ofDatabase);
	ofDatabase.set(lakeId, { at_ms: now().getTime(), isOver: false });
}

export function endKeepingUp({ db, now }: Context, lakeId: string): void {
	if (!changes.get(db)?.has(lakeId)) return;
	changes.get(db)?.set(lakeId, { at_ms: now().getTime(), isOver: true });
}

/** A person wants to see what is new: nothing older may stand in. */
export function forgetKeepingUp({ db }: Context, lakeId: string): void {
	changes.get(db)?.delete(lakeId);
}

/** Whether the schedule is changing a lake's weather, or has only just done so. */
export function keptUp({ db, now }: Context, lakeId: string): 'changing' | 'changed' | 'settled' {
	const change = changes.get(db)?.get(lakeId);
	const ago_ms = change ? now().getTime() - change.at_ms : Infinity;
	if (!change || ago_ms < 0 || ago_ms > IN_THE_MAKING_MS) return 'settled';
	return change.isOver ? 'changed' : 'changing';
}
