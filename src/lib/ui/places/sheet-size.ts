import type { TripNote } from './TripPaper.svelte';
import type { TripSheetWords } from './trip-text.ts';

/** How large the letters of a printed sheet may be. */
export type SheetSize = 'large' | 'medium' | 'small';

/**
 * Letters in a line of one of the two columns, and lines of both on a Letter page, the lower of the two
 * papers. Lines are counted too high by about a seventh, as measured in Chromium's PDFs, and the room is
 * set for that.
 */
const ROOM: Record<Exclude<SheetSize, 'small'>, { letters: number; lines: number }> = {
	large: { letters: 47, lines: 110 },
	medium: { letters: 52, lines: 124 }
};

/** A heading with its rule and the space before it. */
const HEADING_lines = 1.8;
const HEADINGS = 7;
/** A line to write on. */
const BLANK_lines = 1.6;
/** A name is cut to two lines on paper. */
const NAME_lines = 2;

/** The largest letters that a sheet fits on one page with. */
export function sheetSize(sheet: TripSheetWords, note: TripNote): SheetSize {
	const sizes = ['large', 'medium'] as const;
	return (
		sizes.find((size) => linesOf(sheet, note, ROOM[size].letters) <= ROOM[size].lines) ?? 'small'
	);
}

function linesOf(sheet: TripSheetWords, note: TripNote, letters: number): number {
	const lines = (text: string) => Math.ceil([...text].length / letters);
	const sum = (texts: readonly string[]) => texts.reduce((all, text) => all + lines(text), 0);
	const people = Object.values(note).map((text) => 1 + (text === null ? BLANK_lines : lines(text)));
	const { route, loads, cautions, spots, beside } = sheet;
	return (
		HEADINGS * HEADING_lines +
		// It goes over both columns, and takes its lines from each.
		(beside === null ? 0 : lines(beside)) +
		people.reduce((all, each) => all + each, 0) +
		loads.shown.reduce(
			(all, { name, status }) => all + Math.min(NAME_lines, lines(`${name} ${status}`)),
			1
		) +
		sum(cautions.shown) +
		lines(sheet.always) +
		(route ? sum([route.name, route.carries, route.holes]) + 2 : 4) +
		spots.shown.length +
		2 +
		sum([...sheet.checklist, ...sheet.after, sheet.sources])
	);
}
