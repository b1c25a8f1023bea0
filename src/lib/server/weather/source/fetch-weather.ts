import { judge } from './checks/judge.ts';
import { nothingMapped } from './checks/nothing-mapped.ts';
import { askCall, type CallAnswer } from './ask-call.ts';
import type { Ask, Fault, FaultCode, FetchSettings, SourceAnswer } from './contract.ts';
import { emptyAnswer } from './empty-answer.ts';
import { HttpClient } from './http/client.ts';
import { freshUntil, httpDate, retryAfter_s } from './http/waiting.ts';
import { issueTime } from './issue-time.ts';
import { dayAt } from './lake-days.ts';
import { missingNeed } from './needs.ts';
import { hasFallen } from './read/fallen.ts';
import type { Mapped } from './read/mapped.ts';
import { mergeMapped, older } from './read/merge.ts';
import { understand } from './read/understand.ts';
import { redactAll } from './redact.ts';
import type { Call, WeatherSource } from './schema.ts';
import { callFor, spansOf, type Span } from './spans.ts';
import { userAgent } from './user-agent.ts';

/** The weather that a source has for a lake. Whatever the source does, the answer says it. */
export async function fetchWeather(
	source: WeatherSource,
	ask: Ask,
	settings: FetchSettings
): Promise<SourceAnswer> {
	const answer = emptyAnswer();
	const call = callFor(source, ask.part);
	const need = call ? missingNeed(source, call, ask) : noSuchPart(source, ask);
	const spans = spansOf(source, ask.part, ask, dayAt(ask.now, ask.timeZone));
	const fault = need ?? (spans.length === 0 ? outOfReach(source, ask) : null);
	if (!call || fault) return { ...answer, faults: fault ? [fault] : [] };
	const client = new HttpClient({
		settings,
		key: ask.key,
		userAgent: userAgent(ask.contact),
		signal: ask.signal
	});
	try {
		await askSpans(client, call, ask, spans, answer);
	} finally {
		answer.calls = client.calls;
		answer.bytes = client.bytes;
		await client.close();
	}
	return withoutKey(answer, ask.key);
}

async function askSpans(
	client: HttpClient,
	call: Call,
	ask: Ask,
	spans: readonly Span[],
	answer: SourceAnswer
): Promise<void> {
	let found: Mapped | null = null;
	let lastModified: Date | null = null;
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
			return;
		}
		const { body, url, headers } = came.answer;
		lastModified = older(lastModified, httpDate(headers.get('last-modified') ?? ''));
		const place = { timeZone: ask.timeZone, ...span };
		const read = await understand(body, call.format, url.hostname, call.mapping, place);
		if (read.fault) {
			answer.faults.push(read.fault);
			break;
		}
		if (found) mergeMapped(found, read.mapped);
		else found = read.mapped;
	}
	if (found) fill(answer, call, ask, found, lastModified);
}

/** Faults that say already why nothing can be used. */
const EXPLAINS: ReadonlySet<FaultCode> = new Set(['unitDoubt', 'stale', 'badMapping']);

/** What may be used of what was found. Without a temperature the answer has failed. */
function fill(
	answer: SourceAnswer,
	call: Call,
	ask: Ask,
	found: Mapped,
	lastModified: Date | null
): void {
	const issue = issueTime(found.issuedAt, isMadeTogether(call) ? lastModified : null, ask.now);
	const { hours, days, faults } = judge(call, ask, found, issue.at);
	answer.faults.push(...faults);
	answer.station = found.station;
	answer.issuedAt = issue.at;
	answer.isIssueTold = issue.isTold;
	const nothing = nothingMapped(call.mapping, found, { hours, days }, ask.part);
	if (nothing) {
		if (!faults.some(({ code }) => EXPLAINS.has(code))) answer.faults.unshift(nothing);
		// What was of no use must come again in full.
		answer.validators = null;
		return;
	}
	answer.outcome = 'ok';
	answer.hours = hours;
	answer.days = days;
	answer.hasPrecipitation = hasFallen([...hours, ...days]);
}

/** A record grows at its end; what is to come is made at once, and what is past with it. */
function isMadeTogether({ part }: Call): boolean {
	return part !== 'history';
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

function withoutKey(answer: SourceAnswer, key: string | null): SourceAnswer {
	const { faults, station } = answer;
	return { ...answer, ...redactAll({ faults, station }, key) };
}

function noSuchPart({ name }: WeatherSource, { part }: Ask): Fault {
	const other =
		part === 'history'
			? 'no history; set another source for the past'
			: 'no forecast; set another source for what is to come';
	return { code: 'notConfigured', text: `${name} has ${other}.` };
}

function outOfReach({ name }: WeatherSource, { from, to }: Ask): Fault {
	const text = `${name} does not reach the days from ${from} to ${to}; set another source for them.`;
	return { code: 'notConfigured', text };
}
