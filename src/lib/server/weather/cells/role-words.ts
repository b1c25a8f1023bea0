import type { ValueRole } from './units.ts';

export const WORDS: Readonly<Record<ValueRole, string>> = {
	air: 'the air temperature',
	min: 'the lowest temperature of the day',
	max: 'the highest temperature of the day',
	precipitation: 'precipitation',
	snowfall: 'snowfall',
	landSnow: 'snow depth on land',
	wind: 'wind speed'
};
