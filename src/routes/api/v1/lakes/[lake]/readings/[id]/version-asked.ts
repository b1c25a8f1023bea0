import { Problem } from '../../../../../problem.ts';

/** The version that `If-Match` names; `null` where it names none, or any. @throws Problem */
export function versionAsked(request: Request): number | null {
	const asked = request.headers.get('if-match')?.trim() ?? '*';
	if (asked === '*') return null;
	const version = /^"(\d{1,9})"$/.exec(asked)?.[1];
	if (version === undefined) {
		const detail = `If-Match is ${asked}, but it must be the ETag of the reading, such as "3"`;
		throw new Problem(400, 'Bad Request', detail);
	}
	return Number(version);
}
