import type { IsoDate } from '#lib/model/calendar.ts';
import type { Hole, Reading } from '#lib/model/reading.ts';
import type { FormInput, FormValues } from './form-input.ts';
import { readHoles, type Plausible } from './hole-input.ts';
import { fieldText, fieldUnit } from './quantity.ts';
import type { Units } from '#lib/ui/units-setting.ts';

export interface ReadingFacts extends Plausible {
	/** Nothing is measured after it. */
	today: IsoDate;
	/** The reading as it stands when it is being changed. */
	stored?: Reading;
}

/** A reading as the form gives it, in SI, still to pass the schema of the service. */
export function readReading(input: FormInput, facts: ReadingFacts): Omit<Reading, 'id'> {
	const kind = readKind(input);
	const on = input.day('on');
	if (!input.text('on')) input.refuse('on', 'Type the day it was measured.');
	if (on !== null && on > facts.today) {
		input.refuse(
			'on',
			`${on} is after today at the lake, ${facts.today}. Type the day it was measured.`
		);
	}
	const holes = readHoles(input, facts.stored?.holes ?? [], facts);
	const isRefused = input.issues.some(({ field }) => field.startsWith('holes.'));
	if (kind !== 'wentThrough' && !holes.some(hasIce) && !isRefused) {
		input.refuse(
			input.fieldOf('holes.0.total', 'length'),
			'Type the whole thickness of one hole at least, or its clear and white ice.'
		);
	}
	return {
		on: on ?? '',
		place: input.text('place'),
		kind,
		holes,
		core: readCore(input),
		by: input.text('by'),
		secondHand: input.text('secondHand') === 'yes',
		remark: input.text('remark')
	};
}

/** Open water, 0, was measured too. */
function hasIce({ total_m, clear_m }: Hole): boolean {
	return total_m !== null || clear_m !== null;
}

/** What a form shows for a stored reading. */
export function readingValues(reading: Reading, units: Units): FormValues {
	const unit = fieldUnit('length', units);
	const holes = reading.holes.flatMap((hole, row) =>
		Object.entries(hole).map(([stem, value_m]: [string, number | null]) => [
			`holes.${row}.${stem.slice(0, -2)}_${unit.suffix}`,
			fieldText(value_m, unit)
		])
	);
	const { on, place, kind, core, by, secondHand, remark } = reading;
	const texts = {
		on,
		place: place ?? '',
		kind,
		core: core ?? '',
		by: by ?? '',
		secondHand: secondHand ? 'yes' : '',
		remark: remark ?? ''
	};
	return { ...texts, ...Object.fromEntries(holes) };
}

function readKind(input: FormInput): Reading['kind'] {
	const kind = input.text('kind');
	if (kind === 'measured' || kind === 'atLeast' || kind === 'wentThrough') return kind;
	input.refuse('kind', 'Say whether the ice was drilled through.');
	return 'measured';
}

function readCore(input: FormInput): Reading['core'] {
	const core = input.text('core');
	if (core === null || core === 'sound' || core === 'wet' || core === 'candled') return core;
	input.refuse('core', `“${core}” is none of the choices. Choose one, or “Not looked at”.`);
	return null;
}
