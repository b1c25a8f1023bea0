import type { JsonValue } from 'jsonpath-rfc9535';
import type { Fault } from '../contract.ts';
import { nestingOf } from './nesting.ts';

/** Deeper than any weather service answers, and far from where a reader would run out of stack. */
const DEEPEST = 64;

export type ParsedJson = { json: JsonValue; fault: null } | { json: null; fault: Fault };

/** The JSON of an answer, or what came instead. */
export function parseJson(text: string, host: string): ParsedJson {
	const start = text.trimStart().slice(0, 200);
	if (start === '')
		return failed(
			'empty',
			`${host} answered with nothing at all; check the address and the dates that it asks for.`
		);
	if (start.startsWith('<')) return failed('notJson', markup(start, host));
	if (!/^[[{]/.test(start))
		return failed(
			'notJson',
			`${host} answered with text that is not JSON; check the address, or choose CSV if that is what it sends.`
		);
	const { deepest, isOpen } = nestingOf(text);
	if (deepest > DEEPEST)
		return failed(
			'tooLarge',
			`The answer of ${host} is nested more than ${DEEPEST} levels deep and was left unread; this is no weather.`
		);
	try {
		const json: JsonValue = JSON.parse(text);
		return { json, fault: null };
	} catch {
		return isOpen
			? failed(
					'truncated',
					`The answer of ${host} ends in the middle. Nothing of it is used; it is asked again later, and if that goes on, ask for fewer days in one call.`
				)
			: failed(
					'notJson',
					`${host} answered with something that only looks like JSON; tell its operators, or try another format of theirs.`
				);
	}
}

function failed(code: Fault['code'], text: string): ParsedJson {
	return { json: null, fault: { code, text } };
}

function markup(start: string, host: string): string {
	return /^<\?xml/i.test(start) && !/<html/i.test(start)
		? `${host} answered with XML; ask it for JSON or CSV, often by a word in the address such as format=json.`
		: `${host} answered with a web page instead of data; check the address: it may want a key, or be the page for people.`;
}
