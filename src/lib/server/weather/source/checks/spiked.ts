import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import { SPIKE_K, spikedDays, spikedHours } from '#lib/model/spiked-air.ts';
import type { Fault } from '../contract.ts';
import { hourText } from '../lake-days.ts';
import type { Judged } from './judge.ts';

const UNKNOWN = { air_degC: null, min_degC: null, max_degC: null };

/**
 * An answer without the frost that no weather makes between two warmer hours or days: a slip of a
 * service makes ice. Warmth that comes so is told of and left, for caution.
 */
export function withoutSpikes(
	hours: readonly WeatherHour[],
	days: readonly DayValues[],
	timeZone: string
): Judged {
	const means = days.map(({ on, air_degC, min_degC, max_degC }) => ({
		on,
		air_degC:
			air_degC ?? (min_degC === null || max_degC === null ? null : (min_degC + max_degC) / 2)
	}));
	const coldHours = spikedHours(hours, 'colder');
	const coldDays = spikedDays(means, 'colder');
	const [lostHours, lostDays] = [new Set(coldHours), new Set(coldDays)];
	const whenHour = (at: number) => hourText(hours[at]?.at_s ?? 0, timeZone);
	const whenDay = (at: number) => means[at]?.on ?? '';
	const faults = [
		told(coldHours, 'colder', 'hour', (at) => [hours[at]?.air_degC ?? 0, whenHour(at)]),
		told(spikedHours(hours, 'warmer'), 'warmer', 'hour', (at) => [
			hours[at]?.air_degC ?? 0,
			whenHour(at)
		]),
		told(coldDays, 'colder', 'day', (at) => [means[at]?.air_degC ?? 0, whenDay(at)]),
		told(spikedDays(means, 'warmer'), 'warmer', 'day', (at) => [
			means[at]?.air_degC ?? 0,
			whenDay(at)
		])
	];
	return {
		hours: hours.map((hour, at) => (lostHours.has(at) ? { ...hour, air_degC: null } : hour)),
		days: days.map((day, at) => (lostDays.has(at) ? { ...day, ...UNKNOWN } : day)),
		faults: faults.filter((fault) => fault !== null)
	};
}

const WHAT_OF_IT = {
	colder: (isOne: boolean) => (isOne ? 'it is taken as unknown' : 'they are taken as unknown'),
	warmer: (isOne: boolean) => (isOne ? 'it counts, for caution' : 'they count, for caution')
};

function told(
	found: readonly number[],
	side: 'colder' | 'warmer',
	unit: 'hour' | 'day',
	first: (at: number) => [air_degC: number, when: string]
): Fault | null {
	const [at] = found;
	if (at === undefined) return null;
	const [air_degC, when] = first(at);
	const isOne = found.length === 1;
	const shown = `${Math.round(air_degC * 10) / 10} °C`.replace('-', '−');
	const text = `${found.length} ${unit}${isOne ? ' is' : 's are'} ${side} by more than ${SPIKE_K} °C than the ${unit}s beside ${isOne ? 'it' : 'them'}, the first ${shown} at ${when}: no weather does that, so ${WHAT_OF_IT[side](isOne)}. The service may be out of order; set another source before this one if that goes on.`;
	return { code: 'impossible', text, count: found.length, at: when };
}
