import { askCall, type CallAnswer } from './ask-call.ts';
import type { Ask, SourceAnswer } from './contract.ts';
import type { HttpClient } from './http/client.ts';
import { statusNotice } from './http/status-fault.ts';
import { freshUntil, httpDate, retryAfter_s, sentAt } from './http/waiting.ts';
import type { Mapped } from './read/mapped.ts';
import { mergeMapped, older } from './read/merge.ts';
import { understand } from './read/understand.ts';
import type { Call } from './schema.ts';
import type { Span } from './spans.ts';

/** What came, to be judged for each part. */
export interface Found {
	mapped: Mapped;
	lastModified: Date | null;
	/** When it was sent, by the clock of who sent it; `null` where that tells none. */
	sentAt: Date | null;
}

/** Asks span after span and joins what came; faults, waits and validators are noted in `answer`. */
export async function askSpans(
	client: HttpClient,
	call: Call,
	ask: Ask,
	spans: readonly Span[],
	answer: SourceAnswer
): Promise<Found | null> {
	let mapped: Mapped | null = null;
	let lastModified: Date | null = null;
	let sent: Date | null = null;
	for (const span of spans) {
		// Of several calls no one answers for all of them.
		const validators = spans.length === 1 ? ask.validators : null;
		const came = await askCall(client, call, ask, span, validators);
		noteHead(answer, came, ask, spans.length);
		if (came.fault) {
			answer.faults.push(came.fault);
			break;
		}
		if (!came.answer) break;
		if (came.answer.status === 304) {
			answer.outcome = 'unchanged';
			answer.validators = ask.validators;
			return null;
		}
		const { body, url, headers, status } = came.answer;
		const notice = statusNotice(status, url.hostname);
		if (notice && !mapped) answer.faults.push(notice);
		lastModified = older(lastModified, httpDate(headers.get('last-modified') ?? ''));
		sent = older(sent, sentAt(headers, ask.now));
		const place = { timeZone: ask.timeZone, ...span };
		const read = await understand(body, call.format, url.hostname, call.mapping, place);
		if (read.fault) {
			answer.faults.push(read.fault);
			break;
		}
		if (mapped) mergeMapped(mapped, read.mapped);
		else mapped = read.mapped;
	}
	return mapped && { mapped, lastModified, sentAt: sent };
}

function noteHead(
	answer: SourceAnswer,
	{ answer: http, of }: CallAnswer,
	ask: Ask,
	spans: number
): void {
	if (!http) return;
	const { headers, status } = http;
	answer.freshUntilAt = freshUntil(headers, ask.now);
	if (status === 429 || status === 503) answer.retryAfter_s = retryAfter_s(headers, ask.now);
	const etag = headers.get('etag');
	const lastModified = headers.get('last-modified');
	const isUsable = spans === 1 && status === 200 && (etag !== null || lastModified !== null);
	answer.validators = isUsable ? { etag, lastModified, of } : null;
}
