import type { JsonValue } from 'jsonpath-rfc9535';
import type { TimeForm } from '../schema.ts';
import type { WallClock } from './clock-of.ts';
import { MomentReader, type Moment } from './moments.ts';

/** The times of an axis in their order, each once. */
export interface Timeline {
	starts_s: number[];
	/** Of intervals; else `null`, and the distance to the next time tells. */
	lengths_s: (number | null)[];
	/** Where in the answer each time stands: once, or more often. */
	places: number[][];
	/** Clock times that could be either of two hours. */
	doubled: number;
	unread: Trouble;
	/** Clock times that do not exist, over which clocks are set forward. */
	skipped: Trouble;
}

export interface Trouble {
	count: number;
	/** The first of them, in words. */
	first: string | null;
}

export interface Window {
	start_s: number;
	end_s: number;
}

/** Times further than this from the days asked for are left out. */
const MARGIN_s = 3 * 86_400;

export function timelineOf(
	raw: readonly JsonValue[],
	form: TimeForm,
	clock: WallClock | null,
	window: Window
): Timeline {
	const reader = new MomentReader(form, clock);
	const unread: Trouble = { count: 0, first: null };
	const skipped: Trouble = { count: 0, first: null };
	const found: Found[] = [];
	for (const place of placesInTime(raw, form)) {
		const moment = reader.read(raw[place] ?? null);
		if ('kind' in moment) note(moment.kind === 'skipped' ? skipped : unread, moment.text);
		else if (isNear(moment.at_s, window)) found.push({ ...moment, place });
	}
	found.sort((a, b) => a.at_s - b.at_s || a.place - b.place);
	return { ...unique(found), doubled: reader.doubled, unread, skipped };
}

interface Found extends Moment {
	place: number;
}

/** Places from the earliest time to the latest, so that the doubled hour comes in its order. */
function placesInTime(raw: readonly JsonValue[], form: TimeForm): number[] {
	const places = [...raw.keys()];
	const at_s = (each: JsonValue | undefined) => {
		const moment = new MomentReader(form, UTC).read(each ?? null);
		return 'kind' in moment ? NaN : moment.at_s;
	};
	return at_s(raw[0]) > at_s(raw.at(-1)) ? places.toReversed() : places;
}

const UTC: WallClock = { instants: (wall_s) => [wall_s] };

function unique(found: readonly Found[]): Pick<Timeline, 'starts_s' | 'lengths_s' | 'places'> {
	const starts_s: number[] = [];
	const lengths_s: (number | null)[] = [];
	const places: number[][] = [];
	for (const { at_s, length_s, place } of found) {
		if (starts_s.at(-1) === at_s) places.at(-1)?.push(place);
		else {
			starts_s.push(at_s);
			lengths_s.push(length_s);
			places.push([place]);
		}
	}
	return { starts_s, lengths_s, places };
}

function note(trouble: Trouble, text: string): void {
	trouble.count += 1;
	trouble.first ??= text;
}

function isNear(at_s: number, { start_s, end_s }: Window): boolean {
	return at_s >= start_s - MARGIN_s && at_s <= end_s + MARGIN_s;
}
