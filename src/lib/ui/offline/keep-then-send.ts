import type { SubmitFunction } from '@sveltejs/kit';
import { formValues, type FormValues, type Issue } from '../forms/form-input.ts';
import { entryOf, type Made } from './entry.ts';
import { SEND_TAG } from './names.ts';
import { changeWaiting, dropWaiting, putWaiting, type Waiting } from './waiting.ts';
import { isKept } from './watch.ts';

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
		const isPutOff = isOut || options.mends() !== null;
		const underWayUntil_ms = isPutOff ? 0 : Date.now() + PATIENCE_MS;
		const isSafe = await putWaiting({ ...entry, underWayUntil_ms }).then(
			() => true,
			() => false
		);
		// Without a place to keep it there is no telling what is sent again; the server has ways of its own.
		if (isSafe) formData.set('clientId', entry.id);
		const kept = () => {
			if (!isSafe) return options.onLost();
			void changeWaiting(entry.id, { underWayUntil_ms: 0 }).then(askToSend);
			options.onKept(entry);
		};
		if (isSafe && isPutOff) {
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
