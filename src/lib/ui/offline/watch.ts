import { midnights } from './age.ts';
import { latestSeen } from './clock.ts';
import { noticeOf } from './notice.ts';
import { standing } from './standing.svelte.ts';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** A page that is left open says so from then on. */
const OLD_PAGE_MS = HOUR_MS;
const LOOK_MS = 30_000;
const NOTE_MS = 600_000;
const ID = 'not-fresh';
const TYPED = 'typed-kept';

let hasAnswer = false;
/** The age that the page in view has been seen to have. */
let known_ms = 0;
let noted_ms = 0;

/** Keeps an eye on how old the page in view is, and says so at its top. */
export function watch(): void {
	look();
	setInterval(look, LOOK_MS);
	document.addEventListener('visibilitychange', look);
	addEventListener('online', () => void reach());
	addEventListener('offline', () => {
		hasAnswer = false;
		look();
	});
	if (document.getElementById(ID)) void reach();
}

/** What is in view has just come from the server. */
export function madeNow(): void {
	document.documentElement.dataset['madeAt'] = String(Date.now());
	delete document.documentElement.dataset['kept'];
	delete document.documentElement.dataset['state'];
	known_ms = 0;
	look();
}

/** Whether a page is shown from what is kept here. */
export function isKept(): boolean {
	return 'kept' in document.documentElement.dataset;
}

function look(): void {
	noteClock();
	const { kept, madeAt } = document.documentElement.dataset;
	const made_ms = Number(kept ?? madeAt);
	if (!Number.isFinite(made_ms) || made_ms === 0) return;
	const now = new Date();
	// A clock that is set back makes nothing younger.
	const age_ms = Math.max(known_ms, now.getTime() - made_ms);
	known_ms = age_ms;
	const madeThen = new Date(now.getTime() - age_ms);
	const shows = kept !== undefined || age_ms > OLD_PAGE_MS;
	standing.hours = shows ? age_ms / HOUR_MS : 0;
	standing.days = shows ? midnights(madeThen, now) : 0;
	const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
	const isOut = hasAnswer || (kept === undefined && navigator.onLine);
	const notice = noticeOf(madeThen, now, timeZone, isOut);
	standing.oldSince = shows && age_ms > DAY_MS ? notice.since : '';
	if (shows) say(notice.isOld, notice.lead, notice.text);
	else document.getElementById(ID)?.remove();
}

/** Of what this page has seen the clock tell, the next that is opened from what is kept must know. */
function noteClock(): void {
	const now_ms = Date.now();
	if (!('caches' in window) || now_ms < noted_ms + NOTE_MS) return;
	noted_ms = now_ms;
	// Refused in some private windows, where nothing is kept either.
	latestSeen().catch(() => undefined);
}

/** As the service worker puts it at the top of a kept page. */
function say(isOld: boolean, lead: string, text: string): void {
	const bar =
		document.getElementById(ID) ?? document.body.insertBefore(newBar(), document.body.firstChild);
	bar.className = isOld ? 'old' : 'kept';
	// By now the page itself lists what waits.
	document.getElementById(TYPED)?.remove();
	const [line] = bar.children;
	const words = document.createElement('b');
	words.textContent = lead;
	const more = hasAnswer ? ' There is a connection again: load the page anew.' : '';
	if (line && line.textContent !== `${lead} ${text}${more}`) {
		line.replaceChildren(words, ` ${text}${more}`);
	}
}

function newBar(): HTMLElement {
	const bar = document.createElement('div');
	bar.id = ID;
	bar.role = 'status';
	const again = document.createElement('a');
	again.href = '';
	again.textContent = 'Load it anew';
	const links = document.createElement('p');
	links.append(again);
	bar.append(document.createElement('p'), links);
	return bar;
}

/** Asks the server itself: a browser that thinks it is connected may only be connected to a router. */
async function reach(): Promise<void> {
	const response = await fetch('/api/v1/health', { cache: 'no-store' }).catch(() => null);
	hasAnswer = response?.ok === true;
	look();
}
