import type { JsonValue } from 'jsonpath-rfc9535';
import type { Step } from './json-path.ts';

export interface Place {
	steps: readonly Step[];
	value: JsonValue;
}

/** Enough for any answer of a weather service, and quickly over for anything else. */
const MOST_PLACES = 4000;
const DEEPEST = 9;
/** Rows are alike: a few of them show what is in all. */
const ROWS_LOOKED_AT = 3;

/** Objects, arrays and single values from the top down; of arrays the first elements only. */
export function* placesIn(root: JsonValue): Generator<Place> {
	const queue: Place[] = [{ steps: [], value: root }];
	for (let at = 0; at < queue.length && at < MOST_PLACES; at += 1) {
		const place = queue[at];
		if (!place) return;
		yield place;
		if (place.steps.length >= DEEPEST) continue;
		for (const [step, value] of childrenOf(place.value)) {
			if (queue.length < MOST_PLACES) queue.push({ steps: [...place.steps, step], value });
		}
	}
}

function childrenOf(value: JsonValue): [Step, JsonValue][] {
	if (Array.isArray(value)) {
		const first = value.slice(0, ROWS_LOOKED_AT).filter((each) => isContainer(each));
		return first.map((each, index) => [index, each]);
	}
	return typeof value === 'object' && value !== null ? Object.entries(value) : [];
}

export function isContainer(value: JsonValue | undefined): value is JsonValue[] | JsonObject {
	return typeof value === 'object' && value !== null;
}

export type JsonObject = { [key: string]: JsonValue };

export function isObject(value: JsonValue | undefined): value is JsonObject {
	return isContainer(value) && !Array.isArray(value);
}

export function isScalar(value: JsonValue | undefined): boolean {
	return !isContainer(value);
}
