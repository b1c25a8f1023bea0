import type { SubmitFunction } from '@sveltejs/kit';
import { joinedHoles } from '#lib/model/joined-holes.ts';
import { formValues, type FormValues, type Issue } from '../forms/form-input.ts';
import { SEND_TAG } from './names.ts';
import { dropWaiting, listWaiting, newClientId, putWaiting, type Waiting } from './waiting.ts';
import { isKept } from './watch.ts';

/** What a form makes of its fields, by the rules that the server has too. */
export type Made =
	| Pick<Waiting, 'lake' | 'site' | 'reading' | 'position' | 'changes'>
	| { issues: readonly Issue[] };

interface Options {
	/** Whether a button of the form is for storing; all are without it. */
	isOwn?: (action: URL) => boolean;
	/** The entry that is mended; `null` for a new one. */
	mends: () => Waiting | null;
	make: (values: FormValues) => Made;
	/** It is kept here and was not sent. */
	onKept: (entry: Waiting) => void;
	/** Only told where no server can tell it. */
	onIssues: (issues: readonly Issue[]) => void;
	/** Nothing can be kept on this device, and no answer came. */
	onLost: () => void;
	onStored: () => void;
	/** Whether a redirect is the one that says it was stored. */
	isStored: (location: string) => boolean;
}

/** Longer than this nobody waits at a hole; it goes on waiting on its own. */
const PATIENCE_MS = 8_000;
/** Holes of one visit: a reading that was begun no longer ago than this is joined. Our choice. */
const JOINS_MS = 3_600_000;

/**
 * For `use:enhance`: keeps what was typed on this device before anything is sent, then sends it, and lets
 * go of it only once the server has said that it is stored.
 */
export function keepThenSend(options: Options): SubmitFunction {
	return async ({ action, formData, cancel, controller }) => {
		if (options.isOwn?.(action) === false) return ({ update }) => update({ reset: false });
		const typed = formValues(formData);
		const made = options.make(typed);
		const isOut = isKept() || !navigator.onLine;
		if ('issues' in made) {
			// The server says the same, with the estimate of the day beside it.
			if (!isOut) return ({ update }) => update({ reset: false });
			options.onIssues(made.issues);
			return cancel();
		}
		const entry = await entryOf(made, typed, options.mends());
		const isSafe = await putWaiting(entry).then(
			() => true,
			() => false
		);
		// Without a place to keep it there is no telling what is sent again; the server has ways of its own.
		if (isSafe) formData.set('clientId', entry.id);
		const kept = () => {
			if (!isSafe) return options.onLost();
			askToSend();
			options.onKept(entry);
		};
		if (isSafe && (isOut || options.mends())) {
			cancel();
			return kept();
		}
		const timer = setTimeout(() => {
			controller.abort();
			kept();
		}, PATIENCE_MS);
		return async ({ result, update }) => {
			clearTimeout(timer);
			const isElsewhere = result.type === 'redirect' && !options.isStored(result.location);
			if (result.type === 'error' || isElsewhere) return kept();
			if (result.type !== 'failure') options.onStored();
			await update({ reset: false });
			// Only then: a page that sees it go asks the server anew, which would cut its own way short.
			if (isSafe) await dropWaiting(entry.id);
		};
	};
}

async function entryOf(
	made: Exclude<Made, { issues: readonly Issue[] }>,
	typed: FormValues,
	mends: Waiting | null
): Promise<Waiting> {
	const now_ms = Date.now();
	return {
		...made,
		id: mends?.id ?? newClientId(),
		typed,
		joins: made.changes ? null : await joinsOf(made, now_ms, mends),
		changes: mends?.changes ?? made.changes,
		loggedAt_ms: mends?.loggedAt_ms ?? now_ms,
		state: 'waiting',
		reason: null,
		theirs: null
	};
}

/** The first hole of the same visit among those that wait. */
async function joinsOf(
	{ lake, site, reading }: Pick<Waiting, 'lake' | 'site' | 'reading'>,
	now_ms: number,
	mends: Waiting | null
): Promise<string | null> {
	if (mends) return mends.joins;
	const waiting = await listWaiting(lake.id).catch(() => []);
	const first = waiting.find(
		(each) =>
			each.site === site &&
			each.changes === null &&
			each.joins === null &&
			now_ms - each.loggedAt_ms < JOINS_MS &&
			joinedHoles(each.reading, reading) !== null
	);
	return first?.id ?? null;
}

/** Where the browser can, it sends once there is a connection, even after the page was closed. */
function askToSend(): void {
	if (!('serviceWorker' in navigator)) return;
	void navigator.serviceWorker
		.getRegistration()
		.then((registration) => {
			const { sync } = (registration ?? {}) as {
				sync?: { register: (tag: string) => Promise<void> };
			};
			return sync?.register(SEND_TAG);
		})
		.catch(() => undefined);
}
