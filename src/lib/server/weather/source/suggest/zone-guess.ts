import type { JsonValue } from 'jsonpath-rfc9535';
import { isTimeZone } from '../lake-days.ts';
import type { Mapping } from '../schema.ts';
import { pathText } from './json-path.ts';
import { placesIn } from './walk.ts';

type Zone = Mapping['time']['zone'];

/** The zone of times without an offset: as the answer names it, else UTC. */
export function zoneGuess(root: JsonValue): { zone: Zone; why: string } {
	for (const { steps, value } of placesIn(root)) {
		if (steps.length > 3) break;
		const name = String(steps.at(-1) ?? '');
		const isNamed =
			/^(time_?zone|tz|tzid)(_?(name|id))?$/i.test(name) &&
			typeof value === 'string' &&
			isTimeZone(value);
		const isOffset = /^(utc_?offset(_?seconds)?|tz_?offset)$/i.test(name) && isSeconds(value);
		if (isNamed || isOffset) {
			const path = pathText(steps);
			return {
				zone: { path },
				why: `The times carry no offset; the answer names their zone at ${path}.`
			};
		}
	}
	return {
		zone: 'utc',
		why: 'The times carry no offset, and no zone is named: they are taken as UTC; choose the lake’s own zone if that is wrong.'
	};
}

function isSeconds(value: JsonValue): boolean {
	return typeof value === 'number' && Math.abs(value) <= 14 * 3600 && value % 900 === 0;
}
