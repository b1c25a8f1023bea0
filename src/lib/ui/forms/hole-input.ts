import type { Hole } from '#lib/model/reading.ts';
import { depth } from '#lib/ui/format/length.ts';
import type { Units } from '#lib/ui/units-setting.ts';
import type { FormInput, FormValues, Refusal } from './form-input.ts';

/** What a typed thickness is held against. */
export interface Plausible {
	units: Units;
	/** The ice estimated for the day; `null` where there is no estimate. */
	estimate_m: number | null;
}

const MOST_ICE_m = 2;
const MOST_SNOW_m = 1;
const MOST_SLUSH_m = 0.5;
const MOST_FREEBOARD_m = 0.2;
/** Ice layers and whole are both read off a tape: they may differ by this much. */
const TAPE_m = 0.0101;
const TIMES_OUT = 10;
/** Ten times next to nothing is not a slip of the keyboard. */
const LEAST_ESTIMATE_m = 0.03;

/** The rows of holes that a form shows: those that came back, and one at least. */
export function holeRows(values: FormValues): number {
	const rows = Object.keys(values).map((name) => Number(/^holes\.(\d+)\./.exec(name)?.[1] ?? -1));
	return Math.max(1, ...rows.map((row) => row + 1));
}

/** The same form with one more row, for the button that adds one without script. */
export function addHoleRow(values: FormValues): Refusal {
	const first =
		Object.keys(values).find((name) => name.startsWith('holes.0.')) ?? 'holes.0.total_cm';
	const next = first.replace('holes.0.', `holes.${holeRows(values)}.`);
	return { values: { ...values, [next]: '' }, issues: [] };
}

/** The holes of a form in SI; rows without anything typed are left out. */
export function readHoles(input: FormInput, stored: readonly Hole[], like: Plausible): Hole[] {
	const holes: Hole[] = [];
	for (let row = 0; row < holeRows(input.values); row++) {
		if (!isTyped(input.values, row)) continue;
		const hole = readHole(input, row, stored[row]);
		checkParts(input, row, hole, like);
		checkSlips(input, row, hole, like);
		holes.push(hole);
	}
	return holes;
}

function isTyped(values: FormValues, row: number): boolean {
	return Object.entries(values).some(
		([name, text]) => name.startsWith(`holes.${row}.`) && text.trim() !== ''
	);
}

function readHole(input: FormInput, row: number, stored: Hole | undefined): Hole {
	const read = (stem: keyof Hole, from = 0, to = 6) =>
		input.quantity(`holes.${row}.${stem.slice(0, -2)}`, 'length', {
			from,
			to,
			stored: stored?.[stem]
		});
	return {
		total_m: read('total_m'),
		clear_m: read('clear_m'),
		white_m: read('white_m'),
		snow_m: read('snow_m'),
		slush_m: read('slush_m'),
		freeboard_m: read('freeboard_m', -2, 2)
	};
}

/** The whole and its parts have to agree, and half a pair says too little. */
function checkParts(input: FormInput, row: number, hole: Hole, { units }: Plausible): void {
	const { total_m, clear_m, white_m } = hole;
	if (total_m === null && (clear_m === null) !== (white_m === null)) {
		const missing = clear_m === null ? 'clear' : 'white';
		input.refuse(
			fieldOf(input, row, missing),
			`Type the ${missing} ice too, 0 when there was none, or the whole thickness.`
		);
	}
	if (total_m === null || clear_m === null || white_m === null) return;
	const parts_m = clear_m + white_m;
	if (Math.abs(parts_m - total_m) <= TAPE_m) return;
	const says = `Clear and white make ${depth(parts_m, units)}, the whole says ${depth(total_m, units)}.`;
	const field = fieldOf(input, row, 'total');
	if (parts_m > total_m) input.refuse(field, `${says} Mend one of the three.`);
	else {
		input.ask(
			field,
			`${says} Is the rest slush? It counts for nothing: type it as slush and leave it out of the whole.`,
			'The rest is ice that I did not tell apart'
		);
	}
}

function checkSlips(input: FormInput, row: number, hole: Hole, like: Plausible): void {
	const ice_m = hole.total_m ?? sum(hole.clear_m, hole.white_m);
	if (ice_m !== null) checkIce(input, row, hole, ice_m, like);
	askAbove(input, row, 'snow', hole.snow_m, MOST_SNOW_m);
	askAbove(input, row, 'slush', hole.slush_m, MOST_SLUSH_m);
	askAbove(input, row, 'freeboard', hole.freeboard_m, MOST_FREEBOARD_m);
}

function checkIce(input: FormInput, row: number, hole: Hole, ice_m: number, like: Plausible): void {
	const { estimate_m, units } = like;
	const field = fieldOf(input, row, hole.total_m === null ? 'clear' : 'total');
	const isHuge = ice_m > MOST_ICE_m;
	const isOut =
		estimate_m !== null &&
		(ice_m > TIMES_OUT * Math.max(estimate_m, LEAST_ESTIMATE_m) || TIMES_OUT * ice_m < estimate_m);
	if (!isHuge && !isOut) return;
	const against =
		isOut && estimate_m !== null
			? ` The estimate for that day is ${depth(estimate_m, units)}.`
			: '';
	input.ask(
		field,
		`Is it really ${depth(ice_m, units)} of ice?${against} Mend it, or tick the box to keep it.`,
		`It is ${depth(ice_m, units)}`
	);
}

function askAbove(
	input: FormInput,
	row: number,
	stem: string,
	value_m: number | null,
	most_m: number
): void {
	if (value_m === null || Math.abs(value_m) <= most_m) return;
	const field = fieldOf(input, row, stem);
	const typed = `${input.values[field]?.trim()} ${field.endsWith('_cm') ? 'cm' : 'inches'}`;
	input.ask(field, `Is it really ${typed}? Mend it, or tick the box to keep it.`, `It is ${typed}`);
}

function fieldOf(input: FormInput, row: number, stem: string): string {
	return input.fieldOf(`holes.${row}.${stem}`, 'length');
}

function sum(a: number | null, b: number | null): number | null {
	return a === null || b === null ? null : a + b;
}
