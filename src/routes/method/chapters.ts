import { COMING_OFF } from './chapters/coming-off.ts';
import { DOUBT } from './chapters/doubt.ts';
import { EARLY } from './chapters/early.ts';
import { GROWTH } from './chapters/growth.ts';
import { LOADS } from './chapters/loads.ts';
import { PLACES } from './chapters/places.ts';
import { THAW } from './chapters/thaw.ts';
import { WEATHER } from './chapters/weather.ts';
import type { Chapter } from './step.ts';

/** In the order in which a day is calculated, then in that of a winter. */
export const CHAPTERS: readonly Chapter[] = [
	WEATHER,
	GROWTH,
	THAW,
	DOUBT,
	LOADS,
	EARLY,
	COMING_OFF,
	PLACES
];
