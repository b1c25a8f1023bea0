import type { JsonValue } from 'jsonpath-rfc9535';
import { readStamp, type DateForm, type Stamp } from '../../cells/dates.ts';
import { inQuotes } from '../../cells/quote.ts';
import { wallSeconds } from '../../cells/stamp-time.ts';
import type { TimeForm } from '../schema.ts';
import type { WallClock } from './clock-of.ts';
import { durationOf_s } from './duration.ts';

/** A time of an answer. */
export interface Moment {
	at_s: number;
	/** Where the time is an interval. */
	length_s: number | null;
}

export type MomentProblem = { kind: 'unread' | 'skipped'; text: string };

/** Times to instants. Times in the doubled hour of autumn are taken in the order in which they come. */
export class MomentReader {
	/** Clock times that could be either of two hours. */
	doubled = 0;
	readonly #form: TimeForm;
	readonly #clock: WallClock | null;
	readonly #seen = new Map<number, number>();

	constructor(form: TimeForm, clock: WallClock | null) {
		this.#form = form;
		this.#clock = clock;
	}

	read(raw: JsonValue): Moment | MomentProblem {
		const text = textOf(raw);
		if (this.#form === 'interval') return this.#interval(text);
		const stamp = stampOf(text, this.#form);
		if (typeof stamp === 'string') return unread(stamp);
		const at_s = this.#instant(stamp, text);
		return typeof at_s === 'number' ? { at_s, length_s: null } : at_s;
	}

	#interval(text: string): Moment | MomentProblem {
		const [from = '', until = '', ...more] = text.split('/');
		const stamp = more.length === 0 ? stampOf(from, 'iso') : notAnInterval(text);
		if (typeof stamp === 'string') return unread(stamp);
		const at_s = this.#instant(stamp, text);
		if (typeof at_s !== 'number') return at_s;
		const length_s = durationOf_s(until) ?? this.#until(until, at_s);
		return length_s === null ? unread(notAnInterval(text)) : { at_s, length_s };
	}

	#until(text: string, from_s: number): number | null {
		const stamp = stampOf(text, 'iso');
		const at_s = typeof stamp === 'string' ? null : this.#instant(stamp, text);
		return typeof at_s === 'number' && at_s > from_s ? at_s - from_s : null;
	}

	#instant(stamp: Stamp, text: string): number | MomentProblem {
		const wall_s = wallSeconds(stamp);
		if (stamp.offset_s !== null) return wall_s - stamp.offset_s;
		if (!this.#clock) return unread(`${inQuotes(text)} carries no offset from UTC`);
		const [first, second] = this.#clock.instants(wall_s);
		if (first === undefined) return { kind: 'skipped', text: inQuotes(text) };
		if (second === undefined) return first;
		this.doubled += 1;
		const times = this.#seen.get(wall_s) ?? 0;
		this.#seen.set(wall_s, times + 1);
		return times % 2 === 0 ? first : second;
	}
}

/** A time of the record's own calendar, or why it is none. */
export function stampOf(text: string, form: TimeForm): Stamp | string {
	return readStamp(text, DATE_FORM[form]);
}

const DATE_FORM: Readonly<Record<TimeForm, DateForm>> = {
	iso: 'Y-m-d',
	interval: 'Y-m-d',
	epoch_s: 'epoch s',
	epoch_ms: 'epoch ms',
	Ymd: 'Ymd',
	'd/m/Y': 'd/m/Y',
	'm/d/Y': 'm/d/Y',
	'd mon Y': 'd mon Y',
	'mon d Y': 'mon d Y'
};

export function textOf(raw: JsonValue): string {
	if (typeof raw === 'string') return raw.trim();
	return typeof raw === 'number' ? String(raw) : '';
}

function unread(text: string): MomentProblem {
	return { kind: 'unread', text };
}

function notAnInterval(text: string): string {
	return `${inQuotes(text)} is not an interval such as 2026-01-31T18:00:00Z/PT3H`;
}
