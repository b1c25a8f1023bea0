import { WORDS } from '../../cells/role-words.ts';
import type { ValueRole } from '../../cells/units.ts';
import type { Fault } from '../contract.ts';
import type { Count, Tally, Tallied } from '../read/tally.ts';

/** What was left out while reading, a sentence for each kind. */
export function tallyFaults(tally: Tally): Fault[] {
	const problems = tally.problems.map((text): Fault => ({ code: 'badMapping', text }));
	return [...problems, ...tally.counts.map(faultOf)];
}

function faultOf({ what, role, count, first, at }: Count): Fault {
	const words = role === null ? 'the weather' : WORDS[role];
	const when = at === null ? '' : ` (${at})`;
	const { code, text } = SENTENCES[what](count, words, `${first}${when}`, role);
	return { code, text, count, ...(at === null ? {} : { at }) };
}

type Sentence = (
	count: number,
	words: string,
	first: string,
	role: ValueRole | null
) => Pick<Fault, 'code' | 'text'>;

const SENTENCES: Readonly<Record<Tallied, Sentence>> = {
	unreadTimes: (count, _, first) => ({
		code: 'badMapping',
		text: `${times(count, 'time was', 'times were')} not understood and left out, the first one: ${first}; choose another form or place for the times if that is more than a slip.`
	}),
	skippedTimes: (count, _, first) => ({
		code: 'clockChange',
		text: `${times(count, 'clock time does', 'clock times do')} not exist, since clocks were set forward over ${count === 1 ? 'it' : 'them'}: ${first}. ${count === 1 ? 'It is' : 'They are'} left out; if the source keeps one time all year, choose UTC or its offset instead of the local zone.`
	}),
	doubledTimes: (count) => ({
		code: 'clockChange',
		text: `${times(count, 'clock time comes', 'clock times come')} twice on the day when clocks are set back, and ${count === 1 ? 'was' : 'were'} taken in the order given; ask the source for UTC if it offers that.`
	}),
	repeatedTimes: (count, _, first) => ({
		code: 'repeated',
		text: `${times(count, 'time is', 'times are')} given more than once, the first at ${first}; the later value stands. If there are several stations in the answer, narrow the address down to one.`
	}),
	nulls: (count, words, first) => ({
		code: 'nulls',
		text: `${times(count, 'value', 'values')} of ${words} ${count === 1 ? 'is' : 'are'} empty in the middle of the answer, the first${first.replace('null', '')}; ${count === 1 ? 'it is' : 'they are'} taken as unknown, and a second source can fill ${count === 1 ? 'it' : 'them'}.`
	}),
	notNumbers: (count, words, first) => ({
		code: 'badMapping',
		text: `${times(count, 'value', 'values')} of ${words} ${count === 1 ? 'is' : 'are'} no number, the first one ${first}; choose a path that leads to the number itself.`
	}),
	impossible: (count, words, first) => ({
		code: 'impossible',
		text: `${times(count, 'value', 'values')} of ${words} can't be and ${count === 1 ? 'was' : 'were'} left out, the first one ${first}; check the unit, and the station if the unit is right.`
	}),
	contradictions: (count, _, first) => ({
		code: 'impossible',
		text: `On ${times(count, 'day', 'days')} the temperatures contradict each other and were left out, the first: ${first}; check which path is the lowest and which the highest.`
	})
};

function times(count: number, one: string, many: string): string {
	return count === 1 ? `1 ${one}` : `${count.toLocaleString('en')} ${many}`;
}
