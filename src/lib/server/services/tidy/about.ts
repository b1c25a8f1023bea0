import type { LakeRecord } from '../lakes.ts';
import type { Attribution } from '../sources/attributions.ts';

/** What the folder is, for whoever finds it in ten years, and whose weather is in it. */
export function aboutText(
	lake: LakeRecord,
	at: Date,
	attributions: readonly Attribution[]
): string {
	const credits = attributions.map(({ name, text, licence }) =>
		[`  ${name}: ${text}`, licence ? `, ${licence}` : ''].join('')
	);
	const lines = [
		`${lake.name}: winters as they were recorded, exported on ${at.toISOString().slice(0, 10)}.`,
		...(lake.isInvented ? ['', 'THE LAKE AND ALL NUMBERS ARE INVENTED.'] : []),
		'',
		'Measurements only, no estimate. An empty cell is not known, never zero. Lengths in cm unless',
		'the column says otherwise, temperatures in degrees C, days of the calendar at the lake.',
		'',
		'lakes.csv             position, area, depth; a row for each part of the lake with ice of its own',
		'weather.csv           a row a day; snowfall as fresh snow, ten times the depth of its water',
		'freezeup.csv          freeze-up and ice-out of each winter; between two days the middle one',
		'ice.csv               a row a reading, the mean of its holes; only ice that nobody worked on,',
		'                      away from landings, cracks and ridges',
		'readings/             every reading, a row a hole, with who read and remarked what',
		'events.csv            what was done to the ice, and when it opened again',
		'',
		'Not in here: hours, forecasts, weather sources, loads, weak spots, routes, where exactly a',
		'reading was taken, and what was deleted. A backup has all of it.',
		...(credits.length > 0 ? ['', 'The weather is in part by', ...credits] : [])
	];
	return lines.map((line) => `${line}\r\n`).join('');
}
