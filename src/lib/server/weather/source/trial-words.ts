import { WORDS } from '../cells/role-words.ts';
import { VALUE_ROLES } from '../cells/units.ts';
import type { Judged } from './checks/judge.ts';
import { hourText } from './lake-days.ts';
import type { Mapping } from './schema.ts';

/** What was understood, in sentences: the step, the clock, the units and the span. */
export function trialWords(
	mapping: Mapping,
	{ hours, days }: Pick<Judged, 'hours' | 'days'>,
	timeZone: string
): string[] {
	const units = VALUE_ROLES.flatMap((role) => {
		const unit = mapping.values[role]?.unit;
		return unit === undefined ? [] : [`${WORDS[role]} in ${unit}`];
	});
	const step = mapping.step === 'hourly' ? 'Hours' : 'Days';
	return [
		`${step}, ${clockWords(mapping)}.`,
		`Read as ${units.join(', ')}.`,
		...spanWords(hours, days, timeZone)
	];
}

function clockWords({ step, time: { zone, form, stamp } }: Mapping): string {
	if (step === 'daily') return 'of the lake’s own calendar';
	const end = stamp === 'end' ? ', stamped at their end' : '';
	if (form.startsWith('epoch')) return `by the seconds since 1970, which are UTC${end}`;
	if (zone === 'offset') return `with their offset from UTC${end}`;
	if (zone === 'utc') return `in UTC${end}`;
	if (zone === 'lake') return `on the clock of the lake${end}`;
	return 'name' in zone
		? `on the clock of ${zone.name}${end}`
		: `in the zone that the answer names${end}`;
}

function spanWords(hours: Judged['hours'], days: Judged['days'], timeZone: string): string[] {
	const known = hours.filter(({ air_degC }) => air_degC !== null);
	const [first, last] = [known.at(0), known.at(-1)];
	if (first && last) {
		const from = hourText(first.at_s, timeZone);
		return [
			`${known.length} hours with a temperature, from ${from} to ${hourText(last.at_s, timeZone)} at the lake.`
		];
	}
	const [firstDay, lastDay] = [days.at(0), days.at(-1)];
	return firstDay && lastDay
		? [`${days.length} days, from ${firstDay.on} to ${lastDay.on}.`]
		: ['No temperature was understood.'];
}
