import type { JsonValue } from 'jsonpath-rfc9535';
import { dateShape } from '../../cells/dates.ts';
import type { Mapping } from '../schema.ts';
import { pathText } from './json-path.ts';
import { placesIn } from './walk.ts';

const ISSUED =
	/^(updated(_?at)?|update_?time|last_?updated?|issued(_?at)?|issue_?time|generated(_?at)?|reference_?time|approved_?time|model_?run)$/i;

/** Where an answer says when it was made. */
export function issuedGuess(root: JsonValue): string | undefined {
	for (const { steps, value } of placesIn(root)) {
		if (steps.length > 4) break;
		const isText = typeof value === 'string' && dateShape(value) === 'Y-m-d';
		if (isText && ISSUED.test(String(steps.at(-1) ?? ''))) return pathText(steps);
	}
	return undefined;
}

/** Where an answer names the station and its height. */
export function stationGuess(root: JsonValue): Mapping['station'] {
	for (const { steps, value } of placesIn(root)) {
		if (steps.length > 4) break;
		if (typeof value !== 'string' || value === '') continue;
		if (/^station_?name$/i.test(String(steps.at(-1) ?? ''))) return { name: pathText(steps) };
	}
	return undefined;
}
