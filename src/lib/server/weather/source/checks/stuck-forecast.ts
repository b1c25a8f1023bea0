import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Fault } from '../contract.ts';
import type { Judged } from './judge.ts';
import { withoutStuckDays, withoutStuckHours, type Unstuck } from './stuck.ts';

/**
 * A forecast without the frost that stands still in it for two days of hours or five days: a service that
 * fills up with its last value makes ice that never comes. Warmth that stands still is left, for caution.
 */
export function withoutStuckFrost(
	hours: readonly WeatherHour[],
	days: readonly DayValues[],
	timeZone: string
): Judged {
	// Smooth forecasts of whole degrees Fahrenheit are no whole numbers: all are judged as coarse.
	const ofHours = ofFrost(hours, isFrost, (cold) => withoutStuckHours(cold, [], timeZone));
	const ofDays = ofFrost(days, isFrostDay, withoutStuckDays);
	const faults = [told(ofHours.fault, 'hours'), told(ofDays.fault, 'days')];
	return {
		hours: ofHours.times,
		days: ofDays.times,
		faults: faults.filter((fault) => fault !== null)
	};
}

function isFrost({ air_degC }: WeatherHour): boolean {
	return air_degC !== null && air_degC < 0;
}

function isFrostDay({ air_degC, max_degC }: DayValues): boolean {
	const warmest_degC = max_degC ?? air_degC;
	return warmest_degC !== null && warmest_degC < 0;
}

const UNKNOWN = { air_degC: null, min_degC: null, max_degC: null };

/** The other times end a run, and come out as they went in. */
function ofFrost<Time extends WeatherHour | DayValues>(
	times: readonly Time[],
	isCold: (time: Time) => boolean,
	unstick: (times: readonly Time[]) => Unstuck<Time>
): Unstuck<Time> {
	const cold = times.map((time) => (isCold(time) ? time : { ...time, ...UNKNOWN }));
	const { times: kept, fault } = unstick(cold);
	return { times: times.map((time, at) => (isCold(time) ? (kept[at] ?? time) : time)), fault };
}

function told(fault: Fault | null, what: string): Fault | null {
	if (fault === null) return null;
	const text = `This forecast stands still in the frost from ${fault.at} on: ${fault.count} ${what} are taken as unknown, since no air does that. The service may be out of order; set another source before this one if that goes on.`;
	return { ...fault, text };
}
