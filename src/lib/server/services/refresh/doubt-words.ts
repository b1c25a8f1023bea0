import type { UnitDoubt } from '#lib/model/weather-doubt.ts';
import type { Fault } from '../../weather/source/contract.ts';

/** What a record is suspected of, as a sentence with what to do. */
export function unitFault(doubt: UnitDoubt, name: string, other: string): Fault {
	return { code: 'unitDoubt', text: unitText(doubt, name, other) };
}

function unitText(doubt: UnitDoubt, name: string, other: string): string {
	if (doubt.kind === 'amounts') {
		const times = doubt.factor > 1 ? doubt.factor : 1 / doubt.factor;
		const more = doubt.factor > 1 ? 'more' : 'less';
		return `${name} tells about ${Math.round(times)} times ${more} precipitation than ${other}: check whether it is in mm or in inches.`;
	}
	const warmer = `${name} reads ${steps(doubt.bias_K)} than ${other}`;
	switch (doubt.kind) {
		case 'fahrenheit':
			return `${warmer}: is it °F? Check the unit of its temperature.`;
		case 'otherFahrenheit':
			return `${warmer}: are those of ${other} in °F? Check their unit.`;
		case 'tenths':
			return `${warmer}: is it in tenths of a degree? Check the unit or the scale of its temperature.`;
		case 'offset':
			return `${warmer}: check its unit, its place and its elevation, or trust it less.`;
	}
}

/** Hours by which the clock runs ahead, negative behind. */
export function clockFault(shift_h: number, name: string, other: string): Fault {
	const hours = Math.abs(shift_h) === 1 ? '1 hour' : `${Math.abs(shift_h)} hours`;
	const way = shift_h > 0 ? 'later' : 'earlier';
	const text = `${name} tells the same weather ${hours} ${way} than ${other}: check the time zone of its times, and whether they mark the start or the end of the hour.`;
	return { code: 'clockDoubt', text };
}

function steps(bias_K: number): string {
	return `${Math.abs(bias_K).toFixed(0)} °C ${bias_K > 0 ? 'warmer' : 'colder'}`;
}
