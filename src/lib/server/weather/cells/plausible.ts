import { isTemperatureRole, type ValueRole } from './units.ts';

interface Limit {
	lowest: number;
	/** Of a day and of an hour. */
	highest: { daily: number; hourly: number };
	words: { daily: string; hourly: string };
}

const AIR: Limit = {
	lowest: -75,
	highest: { daily: 60, hourly: 60 },
	words: { daily: 'from −75 to 60 °C', hourly: 'from −75 to 60 °C' }
};

const WATER: Limit = {
	lowest: 0,
	highest: { daily: 500, hourly: 200 },
	words: { daily: 'from 0 to 500 mm of water a day', hourly: 'from 0 to 200 mm of water an hour' }
};

/** Wider than the records of any lake with ice: common practice, no source. */
const LIMITS: Readonly<Record<ValueRole, Limit>> = {
	air: AIR,
	min: AIR,
	max: AIR,
	precipitation: WATER,
	snowfall: WATER,
	landSnow: {
		lowest: 0,
		highest: { daily: 10, hourly: 10 },
		words: { daily: 'from 0 to 10 m of snow', hourly: 'from 0 to 10 m of snow' }
	},
	wind: {
		lowest: 0,
		highest: { daily: 75, hourly: 75 },
		words: { daily: 'from 0 to 75 m/s', hourly: 'from 0 to 75 m/s' }
	}
};

/** The range that a value lies outside of, in words, or `null` when it can be. */
export function outsideOf(role: ValueRole, value: number, step: 'daily' | 'hourly'): string | null {
	const { lowest, highest, words } = LIMITS[role];
	return value >= lowest && value <= highest[step] ? null : words[step];
}

/** Below zero by less than this is noise of a reanalysis. In the model's units. */
const NOISE = 0.01;

/** Amounts, depths and speeds that are below zero by a hair are zero. */
export function withoutNoise(role: ValueRole, value: number): number {
	return !isTemperatureRole(role) && value < 0 && value > -NOISE ? 0 : value;
}

/** The value where it can be, else `null`. */
export function ifPossible(
	role: ValueRole,
	value: number | null,
	step: 'daily' | 'hourly'
): number | null {
	return value !== null && outsideOf(role, value, step) === null ? value : null;
}
