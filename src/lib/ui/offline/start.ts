import type { ToServiceWorker } from './names.ts';
import { sendWaiting } from './send-waiting.ts';
import { isForgotten } from './forgotten.ts';
import { madeNow, watch } from './watch.ts';
import { fetchType, showType } from '../type-here.ts';

/** Not while the page is still busy with itself. */
const CALM_MS = 2_000;
/** A weak signal comes and goes without a word: what waits is tried again while somebody looks. */
const AGAIN_MS = 20_000;

/** What a page does once it stands: watches its age, sends what waits, and keeps pages for later. */
export function start(): void {
	watch();
	void fetchType();
	const send = () => void (isForgotten() || sendWaiting().catch(() => 0));
	send();
	addEventListener('online', send);
	setInterval(() => document.hidden || send(), AGAIN_MS);
	if ('serviceWorker' in navigator) setTimeout(register, CALM_MS);
}

/** A page has been turned without loading a new one: what is in view has just come from the server. */
export function turned(): void {
	madeNow();
	showType();
}

function register(): void {
	if (isForgotten()) return;
	navigator.serviceWorker.addEventListener('controllerchange', tellWhatIsOpen);
	// It may have come while this page was not calm yet; what is kept already is not fetched again.
	tellWhatIsOpen();
	// Refused in some private windows, where the app works as it does without.
	navigator.serviceWorker.register('/service-worker.js', { type: 'module' }).catch(() => undefined);
}

/** On a first visit the lake in view was loaded before its keeper was there. */
function tellWhatIsOpen(): void {
	const told: ToServiceWorker = { kind: 'opened', path: location.pathname };
	navigator.serviceWorker.controller?.postMessage(told);
}
