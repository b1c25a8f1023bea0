import type { IsoDate } from '#lib/model/calendar.ts';
import type { LoadStatus } from '#lib/model/forecast.ts';
import { shortDay } from '../format/day.ts';
import { inTen } from '../load-dates.ts';

/** A load as the headline needs it. */
export interface GoingLoad {
	id: string;
	/** Short name. */
	mark: string;
	status: LoadStatus;
	expectedFrom: IsoDate | null;
	likelyFrom: IsoDate | null;
	until: IsoDate | null;
	/** Chance on the day of asking that it is met, rounded down; `null` where not estimated. */
	met_percent: number | null;
}

export interface Headline {
	main: string;
	rest: string[];
	/** The load that comes next, whose changes are worth a sentence. */
	nextId: string | null;
}

interface Facts {
	asOf: IsoDate;
	/** Last day told. */
	to: IsoDate;
	snowKnown: boolean;
	/** When an old copy was made, in words: nothing of it counts as drilled now. Empty on a page that is not. */
	oldSince?: string;
}

/** From which day what goes on, as far as it is known. It says what is expected, and permits nothing. */
export function goingHeadline(loads: readonly GoingLoad[], facts: Facts): Headline {
	const { asOf, snowKnown } = facts;
	const met = loads.filter(({ status }) => status === 'reached' || status === 'expectedNotDrilled');
	const rest = [...metSentences(met, facts), ...engineerSentences(loads)];
	if (loads.some(({ status }) => status === 'withheld'))
		return {
			main: 'Stay off today, whatever the ice measures.',
			rest,
			nextId: nextOf(loads, asOf)?.id ?? null
		};
	if (!snowKnown)
		return {
			main: 'No day can be named while the snow on the ice is not known.',
			rest: ['Measure it at a hole, or bring in weather with precipitation.'],
			nextId: null
		};
	const next = nextOf(loads, asOf);
	if (next)
		return {
			main: nextSentence(next, asOf),
			rest: [...chanceSentences(next, asOf), ...rest],
			nextId: next.id
		};
	return { main: withoutNext(loads, met, facts), rest, nextId: null };
}

/** The load that is not met yet and comes first, the likely day counting where the other has passed. */
function nextOf(loads: readonly GoingLoad[], asOf: IsoDate): GoingLoad | undefined {
	const dayOf = ({ expectedFrom, likelyFrom }: GoingLoad): IsoDate | null => {
		if (expectedFrom === null) return null;
		if (expectedFrom > asOf) return expectedFrom;
		return likelyFrom !== null && likelyFrom > asOf ? likelyFrom : null;
	};
	return loads
		.filter(({ status }) => status === 'notYet' || status === 'withheld')
		.filter((load) => dayOf(load) !== null)
		.toSorted((a, b) => ((dayOf(a) ?? '') < (dayOf(b) ?? '') ? -1 : 1))[0];
}

function nextSentence({ mark, expectedFrom, likelyFrom }: GoingLoad, asOf: IsoDate): string {
	const from = (on: IsoDate) => `${on <= asOf ? 'since' : 'from'} ${shortDay(on)}`;
	const expected = expectedFrom === null ? 'not expected' : `expected ${from(expectedFrom)}`;
	const likely = likelyFrom === null ? 'on no day likely' : `likely ${from(likelyFrom)}`;
	return `Next, ${mark}: ${expected}, ${likely}.`;
}

/** How sure that is. */
function chanceSentences({ met_percent }: GoingLoad, asOf: IsoDate): string[] {
	const today =
		met_percent === null ? '' : ` On ${shortDay(asOf)} the chance is ${inTen(met_percent)}.`;
	return [`Expected is as likely as not, likely is nine in ten.${today}`];
}

function withoutNext(
	loads: readonly GoingLoad[],
	met: readonly GoingLoad[],
	{ asOf, to }: Facts
): string {
	const last = loads
		.map(({ until }) => until)
		.filter((until) => until !== null)
		.toSorted()
		.at(-1);
	if (met.length > 0 && met.length === judged(loads).length)
		return `All of it meets the charts at the lower bound${untilFirst(met)}.`;
	if (met.length > 0)
		return `Nothing heavier than ${called(met)} is ${isSomeExpected(loads, asOf) ? 'likely' : 'expected'} by ${shortDay(to)}.`;
	return last !== undefined && last < asOf
		? `Past: the last of it was expected until ${shortDay(last)}.`
		: `Nothing here is expected by ${shortDay(to)}.`;
}

/** Some load that is not met at the lower bound is as likely as not, though on no day likely. */
function isSomeExpected(loads: readonly GoingLoad[], asOf: IsoDate): boolean {
	return loads.some(
		({ status, expectedFrom, until }) =>
			status === 'notYet' &&
			expectedFrom !== null &&
			expectedFrom <= asOf &&
			(until === null || until >= asOf)
	);
}

function untilFirst(met: readonly GoingLoad[]): string {
	const first = met
		.map(({ until }) => until)
		.filter((until) => until !== null)
		.toSorted()[0];
	return first === undefined ? '' : `, the first of it until ${shortDay(first)}`;
}

function metSentences(met: readonly GoingLoad[], { asOf, oldSince = '' }: Facts): string[] {
	const drilled = met.filter(({ status }) => status === 'reached');
	const open = met.filter(({ status }) => status === 'expectedNotDrilled');
	return [
		...(drilled.length > 0
			? [
					oldSince === ''
						? `Met at the lower bound on ${shortDay(asOf)}, and drilled: ${called(drilled)}.`
						: `Not known now. As it stood on ${oldSince}, met at the lower bound and drilled: ${called(drilled)}.`
				]
			: []),
		...(open.length > 0
			? [`Met at the lower bound on ${shortDay(asOf)} but not drilled: ${called(open)}.`]
			: [])
	];
}

function engineerSentences(loads: readonly GoingLoad[]): string[] {
	const left = loads.filter(({ status }) => status === 'askAnEngineer');
	return left.length === 0 ? [] : [`Only an ice engineer can say: ${called(left)}.`];
}

function judged(loads: readonly GoingLoad[]): GoingLoad[] {
	return loads.filter(({ status }) => status !== 'askAnEngineer');
}

/** Each short name once. */
function called(loads: readonly GoingLoad[]): string {
	return [...new Set(loads.map(({ mark }) => mark))].join(', ');
}
