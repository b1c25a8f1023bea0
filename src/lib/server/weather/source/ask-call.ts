import { createHash } from 'node:crypto';
import { query } from 'jsonpath-rfc9535';
import type { Ask, Fault, Validators } from './contract.ts';
import type { Got, HttpAnswer, HttpClient } from './http/client.ts';
import { reasonIn } from './http/reason-in.ts';
import { statusFault } from './http/status-fault.ts';
import { usesKey } from './needs.ts';
import { placeOf, type Placed } from './next-address.ts';
import { decode } from './read/decode.ts';
import { parseJson } from './read/parse-json.ts';
import type { Call } from './schema.ts';
import type { Span } from './spans.ts';
import { fillAddress, fillHeader } from './template.ts';

export type Asked = Pick<Call, 'address' | 'first' | 'headers'>;

export interface CallAnswer {
	/** What came, whatever its status. */
	answer: HttpAnswer | null;
	fault: Fault | null;
	/** Digest of the address. */
	of: string;
}

/** Asks a source for one span, by way of the calls that name the address where it needs them. */
export async function askCall(
	client: HttpClient,
	call: Asked,
	ask: Ask,
	span: Span,
	validators: Validators | null
): Promise<CallAnswer> {
	let before: Placed | null = null;
	let next: string | null = null;
	for (const step of call.first ?? []) {
		const place: Placed | Fault = placeOf(step.address, ask, { ...span, next }, before);
		if ('code' in place) return { answer: null, fault: place, of: '' };
		const named = await nameNext(client, call, step, ask, place);
		if (typeof named !== 'string') return { ...named, of: '' };
		before = place;
		next = named;
	}
	const place = placeOf(call.address, ask, { ...span, next }, before);
	if ('code' in place) return { answer: null, fault: place, of: '' };
	const of = digest(fillAddress(call.address, { ...ask, key: null }, { ...span, next }));
	const conditional = validators?.of === of ? conditions(validators) : {};
	const headers = { ...filled(call.headers, ask.key), ...conditional };
	const got = await client.get({ ...place, headers });
	const isUnchanged = got.answer?.status === 304 && Object.keys(conditional).length > 0;
	return { ...(isUnchanged ? got : checked(got, call)), of };
}

type Checked = Omit<CallAnswer, 'of'>;

async function nameNext(
	client: HttpClient,
	call: Asked,
	step: NonNullable<Call['first']>[number],
	ask: Ask,
	place: Placed
): Promise<string | Checked> {
	const { answer, fault } = checked(
		await client.get({ ...place, headers: filled(step.headers, ask.key) }),
		call
	);
	if (!answer || fault) return { answer, fault };
	const { hostname } = place.url;
	const parsed = parseJson(decode(answer.body), hostname);
	if (parsed.fault) return { answer, fault: parsed.fault };
	const [found] = query(parsed.json, step.next);
	if (typeof found === 'string' || typeof found === 'number') return String(found);
	const text = `${hostname} does not name the next address at ${step.next}; the position may lie outside of what it covers, or its answers have changed.`;
	return { answer, fault: { code: 'badMapping', text } };
}

function checked({ answer, fault }: Got, call: Asked): Checked {
	if (!answer) return { answer, fault };
	const reason = answer.status >= 400 ? reasonIn(answer.body) : null;
	return { answer, fault: statusFault(answer.status, answer.url.hostname, usesKey(call), reason) };
}

function filled(
	headers: Readonly<Record<string, string>> | undefined,
	key: string | null
): Record<string, string> {
	return Object.fromEntries(
		Object.entries(headers ?? {}).map(([name, value]) => [name, fillHeader(value, key)])
	);
}

function conditions({ etag, lastModified }: Validators): Record<string, string> {
	return {
		...(etag === null ? {} : { 'if-none-match': etag }),
		...(lastModified === null ? {} : { 'if-modified-since': lastModified })
	};
}

/** Tells addresses apart without holding one. */
function digest(address: string): string {
	return createHash('sha256').update(address).digest('base64url').slice(0, 22);
}
