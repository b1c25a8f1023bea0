import type { Units } from '../units-setting.ts';
import { grouped, signed, UNKNOWN } from './number.ts';

/** @example temperature(-7.2, metric) // => '−7 °C' */
export function temperature(degC: number | null, units: Units): string {
	if (degC === null) return UNKNOWN;
	return units.measure === 'metric'
		? `${signed(Math.round(degC))} °C`
		: `${signed(Math.round(degC * 1.8 + 32))} °F`;
}

/** A difference of temperatures, which has no offset. @example temperatureStep(20, imperial) // => '36 °F' */
export function temperatureStep(step_K: number, units: Units): string {
	return units.measure === 'metric'
		? `${signed(Math.round(step_K))} °C`
		: `${signed(Math.round(step_K * 1.8))} °F`;
}

/** @example degreeDays(340.2, imperial) // => '612 °F·d' */
export function degreeDays(degCd: number | null, units: Units): string {
	return degCd === null
		? UNKNOWN
		: `${grouped(degreeDaysValue(degCd, units))} ${degreeDaysUnit(units)}`;
}

/** Degree-days as a bare number in the person's unit, unrounded. */
export function degreeDaysValue(degCd: number, units: Units): number {
	return units.measure === 'metric' ? degCd : degCd * 1.8;
}

export function degreeDaysUnit(units: Units): string {
	return units.measure === 'metric' ? '°C·d' : '°F·d';
}
