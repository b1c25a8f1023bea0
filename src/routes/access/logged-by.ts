import type { RequestEvent } from '@sveltejs/kit';
import { isHelper } from '#lib/server/services/access/people.ts';
import { personOf, type Viewer } from '#lib/server/services/access/viewer.ts';
import { LOGGED_BY, PERSON_COOKIE } from '#lib/ui/offline/names.ts';
import { Problem, problemResponse } from '../api/problem.ts';

/** Everybody else is a helper, who may have been removed. */
const ALWAYS_THERE = ['machine', 'owner', 'guest'];

/**
 * The refusal of what says that somebody else logged it than who is signed in now: it stays where it was
 * typed, until that person is signed in or somebody there puts their own name to it. `null` where it
 * says nothing, or that it was the viewer.
 */
export async function refuseOthersLog(event: RequestEvent): Promise<Response | null> {
	const { request, url, locals } = event;
	const by = request.headers.get(LOGGED_BY);
	if (by === null || by === personOf(locals.viewer)?.id) return null;
	const isGone = !ALWAYS_THERE.includes(by) && !(await isHelper(locals.context, by));
	const detail = isGone
		? 'Who logged this does not come in here any more; nothing was stored'
		: 'Somebody else logged this than who is signed in here; nothing was stored';
	const problem = new Problem(412, 'Precondition Failed', detail, { more: { isGone } });
	return problemResponse(problem, url.pathname);
}

const HALF_A_YEAR_S = 180 * 24 * 60 * 60;

/**
 * What tells the pages of a device who is signed in on it: the pages themselves must not say, as they are
 * kept. `null` where the device knows already, or is better left with what it knew.
 */
export function personCookie(
	viewer: Viewer,
	known: string | undefined,
	isSecure: boolean
): string | null {
	if (viewer.way === 'machine') return known === undefined ? null : cookie('', 0, isSecure);
	if (viewer.way !== 'session') return null;
	const now = JSON.stringify(personOf(viewer));
	return now === known ? null : cookie(now, HALF_A_YEAR_S, isSecure);
}

function cookie(text: string, age_s: number, isSecure: boolean): string {
	const words = [`${PERSON_COOKIE}=${encodeURIComponent(text)}`, 'Path=/', `Max-Age=${age_s}`];
	return [...words, 'SameSite=Lax', ...(isSecure ? ['Secure'] : [])].join('; ');
}
