import type { WeatherSource } from '#lib/server/services/sources/mapping.ts';
import { ROLE_LABELS, ROLES } from '../set-up/roles.ts';

const PARTS = {
	history: 'Past days',
	forecast: 'The forecast',
	both: 'Past days and the forecast'
} as const;

/** The addresses of a source with what is read there. They hold no key: only its place, `{key}`. */
export function addressesOf({ calls }: WeatherSource) {
	return calls.map(({ part, address, first = [], mapping }, index) => ({
		index,
		part: PARTS[part],
		steps: [...first.map((step) => step.address), address],
		reads: ROLES.flatMap((role) => {
			const unit = mapping.values[role]?.unit;
			return unit === undefined ? [] : [`${ROLE_LABELS[role].toLowerCase()} in ${unit}`];
		}).join(', '),
		step: mapping.step === 'hourly' ? 'by the hour' : 'by the day'
	}));
}

export type Address = ReturnType<typeof addressesOf>[number];
