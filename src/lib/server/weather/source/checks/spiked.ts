import { meanAir_degC } from '#lib/model/degree-days.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import {
	SPIKE_K,
	spikedDays,
	spikedHours,
	withoutColdDays,
	withoutColdSpikes
} from '#lib/model/spiked-air.ts';
import type { Fault } from '../contract.ts';
import { hourText } from '../lake-days.ts';
import type { Judged } from './judge.ts';

/**
 * An answer without the frost that no weather makes between two warmer hours or days: a slip of a
 * service makes ice. Warmth that comes so is told of and left, for caution.
 */
export function withoutSpikes(
	hours: readonly WeatherHour[],
	days: readonly DayValues[],
	timeZone: string
): Judged {
	const ofHours = (at: number): First => {
		const hour = hours[at];
		return [hour?.air_degC ?? 0, hourText(hour?.at_s ?? 0, timeZone)];
	};
	const ofDays = (at: number): First => {
		const day = days[at];
		return [(day && meanAir_degC(day)) ?? 0, day?.on ?? ''];
	};
	const faults = SIDES.flatMap((side) => [
		told(spikedHours(hours, side), side, 'hour', ofHours),
		told(spikedDays(days, side), side, 'day', ofDays)
	]);
	return {
		hours: [...withoutColdSpikes(hours)],
		days: [...withoutColdDays(days)],
		faults: faults.filter((fault) => fault !== null)
	};
}

type First = [air_degC: number, when: string];

const SIDES = ['colder', 'warmer'] as const;

const WHAT_OF_IT = {
	colder: (isOne: boolean) => (isOne ? 'it is taken as unknown' : 'they are taken as unknown'),
	warmer: (isOne: boolean) => (isOne ? 'it counts, for caution' : 'they count, for caution')
};

function told(
	found: readonly number[],
	side: 'colder' | 'warmer',
	unit: 'hour' | 'day',
	first: (at: number) => First
): Fault | null {
	const [at] = found;
	if (at === undefined) return null;
	const [air_degC, when] = first(at);
	const isOne = found.length === 1;
	const shown = `${Math.round(air_degC * 10) / 10} °C`.replace('-', '−');
	const text = `${found.length} ${unit}${isOne ? ' is' : 's are'} ${side} by more than ${SPIKE_K} °C than the ${unit}s beside ${isOne ? 'it' : 'them'}, the first ${shown} at ${when}: no weather does that, so ${WHAT_OF_IT[side](isOne)}. The service may be out of order; set another source before this one if that goes on.`;
	return { code: 'impossible', text, count: found.length, at: when };
}
