import type { Reading } from '#lib/model/reading.ts';
import type { Waiting } from './waiting.ts';

export type SendAnswer =
	/** `id` of the stored reading, where the answer has it. */
	| { kind: 'stored'; id: string | null }
	| { kind: 'refused'; reason: string }
	| { kind: 'conflict'; theirs: NonNullable<Waiting['theirs']> }
	/** Who typed it is not signed in here now; `isGone`: nor ever will be. */
	| { kind: 'notTheirs'; isGone: boolean }
	/** No answer, or not the server's: it stays, to be tried again. */
	| { kind: 'later'; reason: string | null };

interface Body {
	id?: string;
	ids?: string[];
	detail?: string;
	isGone?: boolean;
	aside?: number;
	stands?: Reading & { version: number };
}

const SIGN_IN = 'Sign in on this device, and it is sent.';

/** What the server's answer means for what was sent. Only its own words count as an answer. */
export async function answerOf(response: Response): Promise<SendAnswer> {
	const { status, type } = response;
	if (type === 'opaqueredirect' || status === 401) return { kind: 'later', reason: SIGN_IN };
	const isOwn = /json/.test(response.headers.get('content-type') ?? '') || status === 204;
	if (!isOwn || status >= 500 || status === 408 || status === 429) {
		return { kind: 'later', reason: status >= 500 ? 'The server has trouble of its own.' : null };
	}
	const body = status === 204 ? {} : ((await response.json()) as Body);
	if (response.ok) return { kind: 'stored', id: body.ids?.[0] ?? body.id ?? null };
	if (body.isGone !== undefined) return { kind: 'notTheirs', isGone: body.isGone };
	if (body.stands) {
		const { version, ...reading } = body.stands;
		return { kind: 'conflict', theirs: { reading, version, aside: body.aside ?? null } };
	}
	return { kind: 'refused', reason: body.detail ?? `The server answered with status ${status}` };
}
