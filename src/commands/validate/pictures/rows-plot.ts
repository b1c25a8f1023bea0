import type { Phase } from '../lake-winter.ts';
import { cloud, meanAndBar, type Point } from './marks.ts';
import { markup, type Markup } from './markup.ts';
import { plot, short } from './plot.ts';
import type { Scale } from './scale.ts';
import type { Summary } from './summary.ts';

/** Errors of one group, on a line of its own under its name. */
export interface ErrorRow {
	name: string;
	/** Which mark it gets. */
	phase: Phase;
	summary: Summary | null;
	/** Single errors, drawn small. */
	errors: readonly number[];
}

const ROW = 34;
const ABOVE_AND_BELOW = 70;
const BESIDE = 20;
const NAMES = 6;

/** Those of the first group, and the row that is furthest off of all. */
export function rowsWords(
	rows: readonly ErrorRow[],
	first: number,
	say: (bias: number) => string
): string {
	const told = rows.flatMap(({ name, summary }) => (summary ? [{ name, bias: summary.bias }] : []));
	const names = new Set(rows.slice(0, first).map(({ name }) => name));
	const opening = told.filter(({ name }) => names.has(name));
	if (opening.length === 0) return 'Nothing was foretold.';
	const furthest = told.reduce((a, b) => (Math.abs(b.bias) > Math.abs(a.bias) ? b : a));
	const words = opening.map(({ name, bias }) => `${name} ${say(bias)}`).join('; ');
	const rest = rows.length > first ? ` Furthest off: ${furthest.name}, ${say(furthest.bias)}.` : '';
	return `In the mean: ${words}.${rest}`;
}

/** A line a group: its mean error with the bar of four in five, over its single errors. */
export function rowsPlot(label: string, x: Scale, rows: readonly ErrorRow[]): Markup {
	const y: Scale = { from: rows.length, to: 0, ticks: [], label: '' };
	return plot({
		label,
		x,
		y,
		left: BESIDE,
		height: ABOVE_AND_BELOW + ROW * rows.length,
		draw: ({ x, y }) =>
			rows.map(({ name, phase, summary, errors }, index) => {
				const [head, foot] = [y(index + 0.4), y(index + 0.75)];
				const points = errors.map((error): Point => [x(error), foot]);
				return [
					markup`<text class="name" x="${NAMES}" y="${short(head)}">${name}</text>`,
					cloud(phase, points),
					summary && meanAndBar(phase, summary, (error) => [x(error), foot])
				];
			})
	});
}
