import { askSpans } from './ask-spans.ts';
import type { Ask, Fault, FetchSettings, SourceAnswer, SourcePart } from './contract.ts';
import { emptyAnswer } from './empty-answer.ts';
import { fillAnswer } from './fill-answer.ts';
import { HttpClient } from './http/client.ts';
import { dayAt } from './lake-days.ts';
import { missingNeed } from './needs.ts';
import { redactAll } from './redact.ts';
import type { WeatherSource } from './schema.ts';
import { callFor, spansOf } from './spans.ts';
import { userAgent } from './user-agent.ts';

/** The weather that a source has for a lake. Whatever the source does, the answer says it. */
export async function fetchWeather(
	source: WeatherSource,
	ask: Ask,
	settings: FetchSettings
): Promise<SourceAnswer> {
	const [answer = emptyAnswer()] = await fetchParts(source, ask, [ask.part], settings);
	return answer;
}

/** Both parts of a source that answers them together, asked once; the calls count for the history. */
export async function fetchBoth(
	source: WeatherSource,
	ask: Omit<Ask, 'part'>,
	settings: FetchSettings
): Promise<Record<SourcePart, SourceAnswer>> {
	const asked: Ask = { ...ask, part: 'history' };
	const [history = emptyAnswer(), forecast = history] = await fetchParts(
		source,
		asked,
		['history', 'forecast'],
		settings
	);
	return { history, forecast: { ...forecast, calls: 0, bytes: 0 } };
}

async function fetchParts(
	source: WeatherSource,
	ask: Ask,
	parts: readonly SourcePart[],
	settings: FetchSettings
): Promise<SourceAnswer[]> {
	const call = callFor(source, ask.part);
	const need = call ? missingNeed(source, call, ask) : noSuchPart(source, ask);
	const spans = spansOf(source, ask.part, ask, dayAt(ask.now, ask.timeZone));
	const fault = need ?? (spans.length === 0 ? outOfReach(source, ask) : null);
	if (!call || fault) {
		return parts.map(() => ({ ...emptyAnswer(), faults: fault ? [fault] : [] }));
	}
	const client = new HttpClient({
		settings,
		key: ask.key,
		userAgent: userAgent(ask.contact),
		signal: ask.signal
	});
	const head = emptyAnswer();
	try {
		const found = await askSpans(client, call, ask, spans, head);
		const { calls, bytes } = client;
		return parts.map((part) => {
			const answer = { ...head, faults: [...head.faults], calls, bytes };
			if (found) fillAnswer(answer, call, { ...ask, part }, found);
			return withoutKey(answer, ask.key);
		});
	} finally {
		await client.close();
	}
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
