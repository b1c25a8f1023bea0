import type { LookAgain } from '#lib/model/places/look-again.ts';
import { shortDay } from '../format/day.ts';
import { wind } from '../format/wind.ts';
import type { Units } from '../units-setting.ts';

/** Why to look again, in a sentence. */
export function againWords(reason: LookAgain, units: Units): string {
	switch (reason.code) {
		case 'wind':
			return `Wind of ${wind(reason.wind_m_s, units)} in the mean of ${shortDay(reason.on)}, since the last check: cracks and ridges may have moved, drifts shifted. Look again.`;
		case 'windNotKnown':
			return 'Whether it has blown since the last check is not known.';
		case 'waterLevel':
			return `Whether the ${reason.water}’s level has changed since ${shortDay(reason.since)} cannot be seen from here: look again.`;
	}
}
