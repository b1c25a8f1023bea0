import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Units } from './units-setting.ts';

/** What stands where a number is not known. */
export const UNKNOWN = 'not known';

const CM_PER_M = 100;
const INCHES_PER_M = 1 / 0.0254;
const POUNDS_PER_KG = 1 / 0.45359237;
/** Keeps 15.24 cm at 6 inches although the division leaves 5.999…. */
const HAIR = 1e-6;
/** Whole centimetres, half inches. */
const STEP = { metric: 1, imperial: 0.5 } as const;
/** Less ice than this is none. */
const LEAST_SHOWN_m = 0.001;
/** Long enough to be read as one wait; longer ones read better in months. */
const DAYS_AS_DAYS = 90;

type Rounding = 'down' | 'up' | 'nearest';

/** Ice as estimated or measured, rounded down. @example thickness(0.319, metric) // => '31 cm' */
export function thickness(metres: number | null, units: Units): string {
	const number = thicknessNumber(metres, units);
	const isSliver = number === '0' && metres !== null && metres >= LEAST_SHOWN_m;
	return isSliver
		? `under ${withUnit(String(STEP[units.measure]), units)}`
		: withUnit(number, units);
}

/** The same without its unit. */
export function thicknessNumber(metres: number | null, units: Units): string {
	return metres === null ? UNKNOWN : lengthNumber(metres, units, 'down');
}

/** Ice that a chart asks for, rounded up. @example requirement(0.151, metric) // => '16 cm' */
export function requirement(metres: number | null, units: Units): string {
	return withUnit(requirementNumber(metres, units), units);
}

/** The same without its unit. */
export function requirementNumber(metres: number | null, units: Units): string {
	return metres === null ? UNKNOWN : lengthNumber(metres, units, 'up');
}

/** Snow, slush or water level, to the nearest. */
export function depth(metres: number | null, units: Units): string {
	return withUnit(depthNumber(metres, units), units);
}

/** The same without its unit. */
export function depthNumber(metres: number | null, units: Units): string {
	return metres === null ? UNKNOWN : lengthNumber(metres, units, 'nearest');
}

/** Growth or loss in a day, without its sign. @example rate(-0.008, metric) // => '8 mm a day' */
export function rate(metres: number, units: Units): string {
	const amount = Math.abs(metres);
	return units.measure === 'metric'
		? `${Math.round(amount * 1000)} mm a day`
		: `${(amount * INCHES_PER_M).toFixed(1)} in a day`;
}

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

/** @example mass(2900, { mass: 'kg', ... }) // => '2,900 kg' */
export function mass(kg: number, units: Units): string {
	return units.mass === 'kg' ? `${grouped(kg)} kg` : `${grouped(kg * POUNDS_PER_KG)} lb`;
}

/** @example day('2027-01-12') // => '12 Jan 2027' */
export function day(on: IsoDate): string {
	return `${shortDay(on)} ${on.slice(0, 4)}`;
}

/** @example shortDay('2027-01-12') // => '12 Jan' */
export function shortDay(on: IsoDate): string {
	const month = new Date(`${on}T00:00:00Z`).toLocaleString('en-GB', {
		month: 'short',
		timeZone: 'UTC'
	});
	return `${Number(on.slice(8))} ${month.slice(0, 3)}`;
}

/** How long before `today`, in words. @example age('2027-01-09', '2027-01-12') // => '3 days ago' */
export function age(on: IsoDate, today: IsoDate): string {
	const days = daysBetween(on, today);
	if (days === 0) return 'today';
	if (days === 1) return 'yesterday';
	return days < 0 ? `${span(-days)} ahead` : `${span(days)} ago`;
}

/** @example span(200) // => '7 months' */
export function span(days: number): string {
	if (days < DAYS_AS_DAYS) return counted(days, 'day');
	const months = Math.round(days / 30.44);
	return months < 24 ? counted(months, 'month') : counted(Math.round(days / 365.25), 'year');
}

/** @example counted(1, 'hole') // => '1 hole' */
export function counted(count: number, noun: string): string {
	return `${grouped(count)} ${noun}${count === 1 ? '' : 's'}`;
}

/** A length as a bare number in the person's unit, unrounded: for scales and drawings. */
export function lengthValue(metres: number, units: Units): number {
	return metres * (units.measure === 'metric' ? CM_PER_M : INCHES_PER_M);
}

export function lengthUnit(units: Units): 'cm' | 'in' {
	return units.measure === 'metric' ? 'cm' : 'in';
}

/** The unit in a heading. */
export function lengthName(units: Units): string {
	return units.measure === 'metric' ? 'cm' : 'inches';
}

/** Degree-days as a bare number in the person's unit, unrounded. */
export function degreeDaysValue(degCd: number, units: Units): number {
	return units.measure === 'metric' ? degCd : degCd * 1.8;
}

export function degreeDaysUnit(units: Units): string {
	return units.measure === 'metric' ? '°C·d' : '°F·d';
}

function lengthNumber(metres: number, units: Units, rounding: Rounding): string {
	const step = STEP[units.measure];
	const steps = lengthValue(metres, units) / step;
	const whole = {
		down: Math.floor(steps + HAIR),
		up: Math.ceil(steps - HAIR),
		nearest: Math.round(steps)
	}[rounding];
	return signed(whole * step);
}

function withUnit(number: string, units: Units): string {
	return number === UNKNOWN ? UNKNOWN : `${number} ${lengthUnit(units)}`;
}

/** A true minus sign, and no minus before zero. */
function signed(value: number): string {
	return value < 0 ? `−${Math.abs(value)}` : String(Math.abs(value));
}

function grouped(value: number): string {
	return Math.round(value).toLocaleString('en-GB');
}
