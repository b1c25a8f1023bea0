import type { SiteOutcome, SiteRecord } from '#lib/server/services/sites.ts';
import { Problem } from '../problem.ts';

/** The site as it was stored. @throws Problem that says what has to be mended first */
export function storedSite(outcome: SiteOutcome, status: 400 | 409): SiteRecord {
	if (outcome.status === 'stored') return outcome.site;
	const { issues } = outcome;
	const title = status === 400 ? 'Bad Request' : 'Conflict';
	const detail = issues.map(({ message }) => message).join(' ');
	throw new Problem(status, title, detail, { issues });
}
