import type { Bin } from './bins.ts';
import { ofPhase, type Miss } from './errors.ts';
import { cloud, line, meanAndBar, type Point } from './marks.ts';
import { markup, type Markup } from './markup.ts';
import { plot, type Place } from './plot.ts';
import { scaleOver, type Scale } from './scale.ts';
import type { Panel } from './section.ts';
import type { Table } from './table.ts';
import { number, offset, PHASES, THICK, titled } from './words.ts';

/** Fewer readings than this in a bin are not put into words. */
const TELLING = 10;
const ASIDE = 4;

export interface ErrorPanel {
	title: string;
	misses: readonly Miss[];
	bins: readonly Bin[];
	x: Scale;
	/** Where a single reading stands across; its bin's middle without it. */
	acrossOf?: (miss: Miss) => number;
	/** What a bin is called in a sentence. */
	unit: string;
	/** Errors that all panels of a section have room for. */
	errors_cm: readonly number[];
}

/** Errors upwards against something across: the single readings, and for each bin its mean and spread. */
export function errorPanel(options: ErrorPanel): Panel {
	const { title, x, errors_cm, bins, unit } = options;
	const says = PHASES.map((phase) => `${titled(phase)}: ${wordsOf(bins, phase, unit)}`).join('. ');
	return {
		title,
		says: `${says}.`,
		picture: plot({
			label: `Errors, ${title}. ${says}.`,
			x,
			y: scaleOver(errors_cm, 'estimate minus measured, cm', 6),
			height: 300,
			draw: (place) => drawn(options, place)
		})
	};
}

function drawn({ misses, bins, acrossOf }: ErrorPanel, { x, y }: Place): Markup[] {
	return PHASES.flatMap((phase) => {
		const aside = phase === 'growth' ? -ASIDE : ASIDE;
		const known = bins.flatMap(({ at, errors }) => {
			const summary = errors[phase];
			return summary === null ? [] : [{ at: x(at) + aside, summary }];
		});
		const means = known.map(({ at, summary }): Point => [at, y(summary.bias)]);
		return [
			cloud(phase, acrossOf ? pointsOf(ofPhase(misses, phase), acrossOf, { x, y }) : []),
			markup`${means.length > 1 ? markup`<path class="means ${phase}" d="${line(means)}"/>` : null}`,
			...known.map(({ at, summary }) => meanAndBar(phase, summary, (error) => [at, y(error)]))
		];
	});
}

function pointsOf(
	misses: readonly Miss[],
	acrossOf: (miss: Miss) => number,
	{ x, y }: Pick<Place, 'x' | 'y'>
): Point[] {
	return misses.map((miss): Point => [x(acrossOf(miss)), y(miss.error_cm)]);
}

/** The bins with the thickest and the thinnest mean error. */
function wordsOf(bins: readonly Bin[], phase: 'growth' | 'decay', unit: string): string {
	const told = bins.flatMap(({ name, errors }) => {
		const summary = errors[phase];
		return summary !== null && summary.n >= TELLING ? [{ name, bias: summary.bias }] : [];
	});
	const sorted = told.toSorted((a, b) => a.bias - b.bias);
	const [least, most] = [sorted[0], sorted.at(-1)];
	if (least === undefined || most === undefined) return `no bin of ${TELLING} readings or more`;
	const words = ({ name, bias }: typeof least) =>
		`at ${name} ${unit} in the mean ${offset(bias, 'cm', THICK)}`;
	return least === most ? words(most) : `${words(most)}, ${words(least)}`;
}

/** The bins of all panels, a row a bin and phase. */
export function binsTable(
	caption: string,
	panels: readonly { title: string; bins: readonly Bin[] }[],
	unit: string
): Table {
	return {
		caption,
		head: ['', 'readings', 'bias', 'RMSE', 'four in five from', 'to'],
		rows: panels.flatMap(({ title, bins }) =>
			PHASES.flatMap((phase) =>
				bins.flatMap(({ name, errors }) => {
					const summary = errors[phase];
					if (summary === null) return [];
					const { n, bias, rmse, low, high } = summary;
					return [
						[
							`${title}, ${phase}, ${name} ${unit}`,
							`${n}`,
							...[bias, rmse, low, high].map((value) => number(value, 1))
						]
					];
				})
			)
		)
	};
}
