import type { UnitChoice } from '#lib/model/shown-length.ts';

/** How a person wants numbers shown. Kept in the cookie `units`. */
export type Units = UnitChoice;

export const DEFAULT_UNITS: Units = { measure: 'metric', mass: 'kg' };

export const UNITS_COOKIE = 'units';

/** Reads the cookie; whatever is not understood falls back to its default. */
export function parseUnits(cookie: string | undefined): Units {
	return withUnits(DEFAULT_UNITS, jsonObject(cookie));
}

/** `units` with those of `wishes` that name a known unit. */
export function withUnits(units: Units, wishes: Record<string, unknown>): Units {
	const { measure, mass } = wishes;
	return {
		measure: measure === 'metric' || measure === 'imperial' ? measure : units.measure,
		mass: mass === 'kg' || mass === 'lb' ? mass : units.mass
	};
}

function jsonObject(text: string | undefined): Record<string, unknown> {
	try {
		const value: unknown = JSON.parse(text ?? '{}');
		return typeof value === 'object' && value !== null ? { ...value } : {};
	} catch {
		return {};
	}
}
