import { ago, moment } from '#lib/ui/format/moment.ts';
import { counted, grouped } from '#lib/ui/format/number.ts';

/** What is known of how a source does, for all of its lakes or for one. */
export interface SourceDoing {
	isOn: boolean;
	problem?: string | null;
	lacksKey?: boolean;
	isUsed: boolean;
	isAsking: boolean;
	answeredAt: Date | null;
	forecastIssuedAt: Date | null;
	failing: { since: Date; failures: number; code: string; text: string } | null;
	waitsUntilAt?: Date | null;
}

export interface StateWords {
	/** What has to be looked after stands out. */
	isTrouble: boolean;
	text: string;
}

/** How a source does, in sentences. Times of the clock are of the zone that is named behind them. */
export function stateWords(doing: SourceDoing, now: Date, timeZone = 'UTC'): StateWords {
	const { isOn, problem, lacksKey, failing } = doing;
	if (problem) return { isTrouble: true, text: problem };
	if (!isOn)
		return { isTrouble: false, text: 'Switched off: it is not asked, and what it brought stays.' };
	if (lacksKey)
		return { isTrouble: true, text: 'It needs a key before it can be asked. Enter one.' };
	const asking = doing.isAsking ? ' It is being asked now.' : '';
	if (failing) return { isTrouble: true, text: failure(doing, failing, now, timeZone) + asking };
	return { isTrouble: false, text: answered(doing, now) + asking };
}

/** @example callWords(12, 2000) // => '12 of 2,000 calls used today (by UTC).' */
export function callWords(used: number, perDay: number | null): string {
	const limit = perDay === null ? '' : ` of ${grouped(perDay)}`;
	const noun = perDay === null ? counted(used, 'call') : `${grouped(used)}${limit} calls`;
	return `${noun} used today (by UTC).`;
}

function failure(
	{ answeredAt, waitsUntilAt }: SourceDoing,
	{ since, failures, code, text }: NonNullable<SourceDoing['failing']>,
	now: Date,
	timeZone: string
): string {
	const clock = (at: Date) => moment(at, now, timeZone) + (timeZone === 'UTC' ? ' UTC' : '');
	const verb = code === 'keyRefused' ? 'Refuses' : 'Fails';
	const times = failures > 1 ? `, ${counted(failures, 'time')} in a row` : '';
	const last = answeredAt
		? ` It answered last ${ago(answeredAt, now)}.`
		: ' It never answered yet.';
	const next = waitsUntilAt
		? ` By itself it is asked again after ${clock(waitsUntilAt)}; refresh to ask now.`
		: '';
	return `${verb} since ${clock(since)}${times}: ${text}${last}${next}`;
}

function answered({ answeredAt, forecastIssuedAt, isUsed }: SourceDoing, now: Date): string {
	if (!answeredAt) return isUsed ? 'Not asked yet.' : 'Not asked: no lake uses it yet.';
	const issued = forecastIssuedAt ? `; forecast issued ${ago(forecastIssuedAt, now)}` : '';
	return `Answered ${ago(answeredAt, now)}${issued}.`;
}
