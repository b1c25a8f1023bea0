import type { Context } from '../context.ts';

const underWay = new WeakMap<Context['db'], Map<string, Promise<unknown>>>();

/**
 * Makes a change to a lake, or whatever `what` names, once those before it are through: what was read in it
 * still stands when it writes. It holds within one process.
 */
export async function oneAtATime<Result>(
	{ db }: Context,
	what: string,
	change: () => Promise<Result>
): Promise<Result> {
	const lines = underWay.get(db) ?? new Map<string, Promise<unknown>>();
	underWay.set(db, lines);
	const done = (lines.get(what) ?? Promise.resolve()).then(change);
	const line = done.catch(() => undefined);
	lines.set(what, line);
	try {
		return await done;
	} finally {
		if (lines.get(what) === line) lines.delete(what);
	}
}

/** What changes of a source are made one at a time under. */
export function sourceLine(id: string): string {
	return `source ${id}`;
}
