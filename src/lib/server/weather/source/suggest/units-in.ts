import type { JsonValue } from 'jsonpath-rfc9535';
import { knownUnit } from '../../cells/header-units.ts';
import { unitsFor, type ValueRole } from '../../cells/units.ts';
import { isObject, placesIn, type JsonObject } from './walk.ts';

const OF_VALUE = ['uom', 'unit', 'units', 'unitCode', 'unit_code', 'unitText'];

/** A unit as it is written, and as we know it. */
export interface StatedUnit {
	text: string;
	unit: string | null;
}

/** Units by the names of what is measured, wherever an answer lists them. */
export function unitsIn(root: JsonValue): Map<string, StatedUnit> {
	const units = new Map<string, StatedUnit>();
	for (const { steps, value } of placesIn(root)) {
		if (!isObject(value) || !/unit|uom/i.test(String(steps.at(-1) ?? ''))) continue;
		for (const [name, text] of Object.entries(value)) {
			if (typeof text === 'string' && !units.has(name))
				units.set(name, { text, unit: unitOf(text) });
		}
	}
	return units;
}

/** The unit that stands beside a value. */
export function unitBeside(object: JsonObject): StatedUnit | null {
	for (const name of OF_VALUE) {
		const text = Object.hasOwn(object, name) ? object[name] : undefined;
		if (typeof text === 'string') return { text, unit: unitOf(text) };
	}
	return null;
}

/** @example unitOf('wmoUnit:km_h-1') // => 'km/h' */
export function unitOf(text: string): string | null {
	const bare = text.replace(/^[a-z]+:/i, '').replaceAll('_', ' ');
	return knownUnit(text) ?? knownUnit(bare);
}

/** The unit as the role knows it, or `null`. */
export function fitting(role: ValueRole, unit: string | null): string | null {
	return unit !== null && unitsFor(role).includes(unit) ? unit : null;
}
