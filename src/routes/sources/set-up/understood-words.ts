import { shortDay } from '#lib/ui/format/day.ts';
import { depth } from '#lib/ui/format/length.ts';
import { counted, signed, UNKNOWN } from '#lib/ui/format/number.ts';
import type { Units } from '#lib/ui/units-setting.ts';
import type { Understood, UnderstoodDay } from './understood.ts';

/** °C in the reader's unit. */
export function inUnit(degC: number, units: Units): number {
	return units.measure === 'metric' ? degC : degC * 1.8 + 32;
}

/** What the drawing shows, for who can't see it. */
export function airSentence({ days, points, step, now_s }: Understood, units: Units): string {
	const airs = points.map(({ air_degC }) => air_degC);
	const [first, last] = [days[0], days.at(-1)];
	if (!first || !last) return 'No temperature was understood.';
	const range = `${air(Math.min(...airs), units)} to ${air(Math.max(...airs), units)}`;
	const coming = points.some(({ at_s }) => at_s > now_s);
	const past = points.some(({ at_s }) => at_s <= now_s);
	const when = coming && past ? 'past and to come' : coming ? 'all to come' : 'all past';
	const paced = step === 'hourly' ? 'By the hour' : 'By the day';
	return `${paced}, ${counted(days.length, 'day')} from ${shortDay(first.on)} to ${shortDay(last.on)}, ${when}: ${range}.${water(days)}`;
}

/** The same by day. */
export function dayTable(days: readonly UnderstoodDay[], units: Units) {
	const rows = days.map((day) => ({
		id: day.on,
		cells: [
			shortDay(day.on),
			airOrUnknown(day.lowest_degC, units),
			airOrUnknown(day.air_degC, units),
			airOrUnknown(day.highest_degC, units),
			day.precipitation_kg_m2 === null ? UNKNOWN : `${day.precipitation_kg_m2.toFixed(1)} mm`,
			depth(day.landSnow_m, units)
		]
	}));
	return { columns: ['Day', 'Lowest', 'Mean', 'Highest', 'Precipitation', 'Snow on land'], rows };
}

function water(days: readonly UnderstoodDay[]): string {
	const known = days.flatMap((day) => day.precipitation_kg_m2 ?? []);
	if (known.length === 0) return '';
	const sum_kg_m2 = known.reduce((sum, amount) => sum + amount, 0);
	return ` Precipitation of ${counted(known.length, 'whole day')}: ${sum_kg_m2.toFixed(1)} mm in all.`;
}

function air(degC: number, units: Units): string {
	const value = signed(Number(inUnit(degC, units).toFixed(1)));
	return `${value} ${units.measure === 'metric' ? '°C' : '°F'}`;
}

function airOrUnknown(degC: number | null, units: Units): string {
	return degC === null ? UNKNOWN : air(degC, units);
}
