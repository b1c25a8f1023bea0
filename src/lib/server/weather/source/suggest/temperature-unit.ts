/** The unit that temperatures can only be, or the one that is likely. */
export function temperatureUnit(numbers: readonly number[]): { unit: string; why: string } {
	const highest = numbers.reduce((most, value) => Math.max(most, value), -Infinity);
	const lowest = numbers.reduce((least, value) => Math.min(least, value), Infinity);
	if (lowest >= 180 && highest <= 335) return { unit: 'K', why: 'its values can only be kelvin' };
	if (highest > 45) return { unit: '°F', why: `values up to ${highest} can only be °F` };
	return {
		unit: '°C',
		why: 'no unit is given, and its values can be °C; choose °F if that is wrong'
	};
}
