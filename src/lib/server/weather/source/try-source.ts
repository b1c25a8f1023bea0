import { askCall, type CallAnswer } from './ask-call.ts';
import { judge } from './checks/judge.ts';
import { nothingMapped } from './checks/nothing-mapped.ts';
import type { Ask, FetchSettings, SourceAnswer, Suggestion, Trial } from './contract.ts';
import { emptyAnswer } from './empty-answer.ts';
import { HttpClient } from './http/client.ts';
import { statusNotice } from './http/status-fault.ts';
import { issueTime } from './issue-time.ts';
import { missingNeed } from './needs.ts';
import type { Answer } from './read/columns.ts';
import { decode } from './read/decode.ts';
import { hasFallen } from './read/fallen.ts';
import { mapAnswer } from './read/map-answer.ts';
import { contentOf } from './read/understand.ts';
import { redact, redactAll } from './redact.ts';
import type { Mapping, TrialCall } from './schema.ts';
import { suggestCsvMapping, suggestMapping } from './suggest-mapping.ts';
import { trialWords } from './trial-words.ts';
import { userAgent } from './user-agent.ts';

/** What of an answer is shown as it came. */
const SHOWN = 65_536;

/** Asks once and says what came and what was understood of it, with a mapping or without. */
export async function trySource(
	call: TrialCall,
	ask: Ask,
	settings: FetchSettings
): Promise<Trial> {
	const answer = emptyAnswer();
	const trial = emptyTrial(answer);
	const need = missingNeed(
		{ name: 'This source', needsKey: false, wantsContact: false },
		call,
		ask
	);
	if (need) {
		answer.faults.push(need);
		return trial;
	}
	const { key, contact, signal } = ask;
	const client = new HttpClient({ settings, key, userAgent: userAgent(contact), signal });
	try {
		const came = await askCall(client, call, ask, ask, null);
		noteHead(trial, came, key);
		if (came.fault) answer.faults.push(came.fault);
		else if (came.answer) await understand(trial, came.answer, call, ask);
	} finally {
		answer.calls = client.calls;
		answer.bytes = client.bytes;
		await client.close();
	}
	return {
		...trial,
		suggestion: redactAll(trial.suggestion, key),
		words: redactAll(trial.words, key),
		answer: { ...answer, ...redactAll({ faults: answer.faults, station: answer.station }, key) }
	};
}

type Http = NonNullable<CallAnswer['answer']>;

async function understand(
	trial: Trial,
	{ body, url, status }: Http,
	call: TrialCall,
	ask: Ask
): Promise<void> {
	const { answer } = trial;
	const notice = statusNotice(status, url.hostname);
	if (notice) answer.faults.push(notice);
	const { content, fault } = contentOf(body, call.format, url.hostname);
	if (fault) {
		answer.faults.push(fault);
		return;
	}
	trial.suggestion = suggestionFor(content);
	trial.mapping = call.mapping ?? trial.suggestion.mapping;
	trial.words = call.mapping ? [] : [...trial.suggestion.words];
	if (trial.mapping) await read(trial, answer, trial.mapping, content, ask);
}

/** Past and coming hours alike, so that all that was understood can be drawn. */
async function read(
	trial: Trial,
	answer: SourceAnswer,
	mapping: Mapping,
	content: Answer,
	ask: Ask
): Promise<void> {
	const found = await mapAnswer(mapping, content, ask);
	const judging = { mapping, part: 'both' as const, reach: {} };
	const issue = issueTime({ told: found.issuedAt, lastModified: null, sentAt: null }, ask.now);
	const past = judge(judging, { ...ask, part: 'history' }, found, issue.at);
	const coming = judge(judging, { ...ask, part: 'forecast' }, found, issue.at);
	answer.hours = [...past.hours, ...coming.hours];
	answer.days = [...past.days, ...coming.days];
	answer.faults.push(...(ask.part === 'history' ? past : coming).faults);
	answer.station = found.station;
	answer.issuedAt = issue.at;
	answer.isIssueTold = issue.isTold;
	const nothing = nothingMapped(mapping, found, answer, ask.part);
	if (nothing) answer.faults.unshift(nothing);
	else answer.outcome = 'ok';
	answer.hasPrecipitation = hasFallen([...answer.hours, ...answer.days]);
	trial.words.unshift(...trialWords(mapping, answer, ask.timeZone));
}

function suggestionFor({ json, table }: Answer): Suggestion {
	return table ? suggestCsvMapping(table) : suggestMapping(json);
}

function noteHead(trial: Trial, { answer }: CallAnswer, key: string | null): void {
	if (!answer) return;
	// Struck out before it is cut, so that no half of a key stands at the end.
	const text = redact(decode(answer.body), key);
	trial.raw = text.slice(0, SHOWN);
	trial.isCut = text.length > SHOWN;
	trial.answeredBy = redact(answer.url.host + answer.url.pathname, key);
	trial.status = answer.status;
	trial.contentType = answer.headers.get('content-type')?.slice(0, 100) ?? null;
}

function emptyTrial(answer: SourceAnswer): Trial {
	return {
		raw: '',
		isCut: false,
		answeredBy: null,
		status: null,
		contentType: null,
		suggestion: null,
		mapping: null,
		answer,
		words: []
	};
}
