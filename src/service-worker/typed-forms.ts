import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import { formValues, type FormValues } from '#lib/ui/forms/form-input.ts';
import { entryOf } from '#lib/ui/offline/entry.ts';
import { midnights } from '#lib/ui/offline/age.ts';
import { holeEntry } from '#lib/ui/offline/hole-entry.ts';
import { lookupKey } from '#lib/ui/offline/keepable.ts';
import { FACTS } from '#lib/ui/offline/names.ts';
import { newClientId, putWaiting, type Waiting } from '#lib/ui/offline/waiting.ts';
import { MAIN } from '#lib/ui/site-link.ts';
import { DEFAULT_UNITS } from '#lib/ui/units-setting.ts';
import { findKept } from './kept-pages.ts';
import { notKept } from './mark.ts';
import { within } from './within.ts';

/** Longer than this nobody waits; what is sent twice is stored once. */
const PATIENCE_MS = 8_000;
/** Nobody is signed in, or it came too late or too fast: it is tried again. */
const NOT_NOW = [401, 408, 429];
/** The forms for a new reading: at the hole, and of a whole visit. */
const FORMS = /^\/lakes\/([\w-]+)\/(at-the-hole|readings)$/;
const READINGS = /^\/lakes\/[\w-]+\/readings(\/[\w-]+)?$/;

/**
 * A reading that a page sends as browsers do, because its own script has not woken yet or never will.
 * Only from our own pages: whatever a worker sends on looks as if it came from here.
 */
export function isTypedForm(request: Request): boolean {
	const { pathname, searchParams } = new URL(request.url);
	const [, , page] = FORMS.exec(pathname) ?? [];
	const action = actionOf(searchParams);
	const isStoring = page === 'readings' ? action === '/add' : page !== undefined && action === '';
	return isStoring && isOfOwnPage(request);
}

/** What else such a page may send: another row for a hole, a change of a stored reading. */
export function isHalfTyped(request: Request): boolean {
	const { pathname, searchParams } = new URL(request.url);
	const isAbout = ['/hole', '/store'].includes(actionOf(searchParams));
	return isAbout && READINGS.test(pathname) && isOfOwnPage(request);
}

/** Sends it on; where nobody answers the page stays as it is, with all that was typed. */
export async function stayingAnswer(request: Request): Promise<Response> {
	return (await within(fetch(request))) ?? new Response(null, { status: 204 });
}

function isOfOwnPage({ method, mode, referrer }: Request): boolean {
	const isOurs = URL.canParse(referrer) && new URL(referrer).origin === location.origin;
	return method === 'POST' && mode === 'navigate' && isOurs;
}

function actionOf(parameters: URLSearchParams): string {
	return [...parameters.keys()].find((name) => name.startsWith('/')) ?? '';
}

/** Sends it on; where nobody answers it is kept on the device, and the page it came from says so. */
export async function formAnswer(request: Request): Promise<Response> {
	const url = new URL(request.url);
	const typed = { ...formValues(await request.formData()), clientId: newClientId() };
	const sent = fetch(url, {
		method: 'POST',
		body: new URLSearchParams(typed),
		headers: { accept: 'text/html' },
		redirect: 'manual'
	});
	const response = await within(sent, PATIENCE_MS);
	if (response !== null && isAnswer(response)) return response;
	const page = pageOf(url);
	try {
		await putWaiting(await entryFrom(typed, url, page));
	} catch {
		return notKept();
	}
	page.searchParams.set('kept', '1');
	return Response.redirect(page, 303);
}

/** The app has taken it, or said in its own page what to mend. */
function isAnswer({ type, status }: Response): boolean {
	return type === 'opaqueredirect' || (status < 500 && !NOT_NOW.includes(status));
}

/** The page that a form is on: its address without the action. */
function pageOf(url: URL): URL {
	const page = new URL(url.pathname, url);
	const site = url.searchParams.get('site');
	if (site !== null) page.searchParams.set('site', site);
	return page;
}

async function entryFrom(typed: FormValues, url: URL, page: URL): Promise<Waiting> {
	const [, id = '', name] = FORMS.exec(url.pathname) ?? [];
	const today = await todayOf(typed, page);
	// A day that nobody has chosen is today's, also on a page that was made days ago.
	const isChosen = typed['on'] !== typed['shownDay'];
	const own = { ...typed, on: isChosen ? (typed['on'] ?? '') : today };
	const where = {
		lake: { id, name: typed['lakeName'] ?? id },
		site: page.searchParams.get('site') || MAIN,
		form: name === 'readings' ? 'reading' : 'hole'
	} as const;
	const made = holeEntry(own, { ...where, today, units: DEFAULT_UNITS });
	const { reading } = made;
	const wished = 'issues' in made ? { ...where, reading, position: null, changes: null } : made;
	const entry = { ...(await entryOf(wished, own, null)), id: typed['clientId'] ?? newClientId() };
	if (!('issues' in made)) return entry;
	const reason = made.issues.map(({ message }) => message).join(' ');
	return { ...entry, state: 'refused', reason };
}

/** The lake's day by now, counted on from the one that the page shows. */
async function todayOf({ shownDay = '', on = '' }: FormValues, page: URL): Promise<IsoDate> {
	// A page of an invented lake shows none: its day stands still.
	if (shownDay === '') return on;
	const kept = await findKept(lookupKey(page) ?? '');
	await kept?.body?.cancel();
	const madeAt = Number(kept?.headers.get(FACTS.madeAt) ?? Date.now());
	return addDays(shownDay, midnights(new Date(madeAt), new Date()));
}
