import type { Viewer } from '#lib/server/services/access/viewer.ts';
import { API_RULES } from './api-rules.ts';
import type { Call, Least, Rules } from './least.ts';
import { PAGE_RULES } from './page-rules.ts';

/** The one table of who may do what. */
export const RULES: Rules = { ...API_RULES, ...PAGE_RULES };

interface Asked {
	/** The route that answers; `null` where nothing does. */
	route: string | null;
	method: string;
	url: URL;
}

/** Who may do what is asked. What stands in no table is the owner's alone. */
export function leastFor({ route, method, url }: Asked): Least {
	if (route === null) return 'anybody';
	const rules = RULES[route] ?? {};
	const isReading = method === 'HEAD' || method === 'OPTIONS';
	const call = isReading ? 'GET' : (method as Call);
	return rules[call] ?? (method === 'POST' ? rules[actionOf(url)] : undefined) ?? 'owner';
}

/** The form action that Kit would choose: the first parameter that begins with a slash. */
function actionOf(url: URL): Call {
	const found = [...url.searchParams.keys()].find((key) => key.startsWith('/'));
	return `?/${found?.slice(1) ?? 'default'}`;
}

/** A route or lake that is not there for this viewer looks like one that is nowhere. */
export type Verdict = 'yes' | 'signIn' | 'no' | 'nowhere';

export function mayDo(viewer: Viewer, least: Least, lake: string | undefined): Verdict {
	if (least === 'open' || least === 'anybody' || viewer.role === 'owner') return 'yes';
	if (viewer.role === 'stranger') return 'signIn';
	if (viewer.role === 'helper') return least === 'owner' ? 'no' : 'yes';
	if (lake !== undefined && lake !== viewer.lake) return 'nowhere';
	const isGuests = least === 'guest' || (least === 'guestWithPlaces' && viewer.seesPlaces);
	return isGuests ? 'yes' : 'no';
}
