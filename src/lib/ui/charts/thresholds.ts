import { lengthValue, requirement, requirementNumber } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import { spread } from './spread.ts';

/** A load by its short name, and the effective thickness asked for it. */
export interface LoadMark {
	mark: string;
	required_m: number | null;
}

/** Loads that ask for the same, each name once. */
export interface LoadGroup {
	names: ReadonlySet<string>;
	required_m: number;
}

/** One line for all loads that ask for the same. */
export interface Threshold {
	/** In the person's unit. */
	value: number;
	label: string;
	/** The end of the line with fewer curves around it. */
	side: 'start' | 'end';
	/** Pixels to move the label down from its line, so that no two labels touch. */
	shift_px: number;
}

const LABEL_px = 17;
/** At the top the day asked for is named, and under it what is gone by from there. */
const DAYS_px = 38;
const LABEL_LETTERS = 22;

/** Loads by what they ask for, the least first; loads that only an engineer can judge are left out. */
export function grouped(marks: readonly LoadMark[], units: Units): LoadGroup[] {
	const groups = new Map<string, LoadGroup>();
	for (const { mark, required_m } of marks) {
		if (required_m === null) continue;
		const shown = requirementNumber(required_m, units);
		const group = groups.get(shown) ?? { names: new Set(), required_m };
		groups.set(shown, { ...group, names: new Set([...group.names, mark]) });
	}
	return [...groups.values()].toSorted((a, b) => a.required_m - b.required_m);
}

/**
 * The groups within reach of a picture that ends at `end`, with labels that don't collide. Those
 * under `carried_m`, below which nothing else is drawn on the last day, are named at that day's end.
 */
export function thresholds(
	marks: readonly LoadMark[],
	units: Units,
	{ end, height_px, carried_m }: { end: number; height_px: number; carried_m: number }
): Threshold[] {
	const within = grouped(marks, units)
		.map((mark) => ({ mark, value: lengthValue(mark.required_m, units) }))
		.filter(({ value }) => value < end);
	const wanted = within.map(({ value }) => height_px * (1 - value / end) - LABEL_px / 2);
	const placed = spread(wanted, LABEL_px, DAYS_px + LABEL_px / 2, height_px - LABEL_px / 2);
	return within.map(({ mark, value }, index) => ({
		value,
		label: markText(mark, units),
		side: mark.required_m < carried_m ? 'end' : 'start',
		shift_px: (placed[index] ?? 0) - (wanted[index] ?? 0)
	}));
}

/** The number first, so that a long name can't push it off the picture. */
export function markText(
	{ names, required_m }: LoadGroup,
	units: Units,
	letters = LABEL_LETTERS
): string {
	return `${requirement(required_m, units)} ${brief([...names], letters)}`;
}

/** As many names as a label has room for; the table beside has them whole. */
function brief(names: readonly string[], letters: number): string {
	const all = names.join(', ');
	if (all.length <= letters) return all;
	const rest = names.length > 1 ? ` and ${names.length - 1} more` : '';
	const first = names[0] ?? '';
	const room = letters - rest.length;
	return (first.length <= room ? first : `${first.slice(0, room - 1).trimEnd()}…`) + rest;
}
