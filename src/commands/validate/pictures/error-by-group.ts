import type { Findings, Mode } from '../findings.ts';
import { EARLY_m } from '../groups.ts';
import { errorsOf, missesOf, ofPhase, type Miss } from './errors.ts';
import { BAR, DECAY, GROWTH, key } from './key.ts';
import type { Markup } from './markup.ts';
import { rowsPlot, rowsWords, type ErrorRow } from './rows-plot.ts';
import { scaleOver, type Scale } from './scale.ts';
import { section, type Panel } from './section.ts';
import { summarize } from './summary.ts';
import { MODES, number, offset, THICK } from './words.ts';

/** Rows of a dataset. */
const ROWS = 3;

/** Errors of each dataset in growth, on early ice and in decay. */
export function errorsByGroup(findings: Findings): Markup {
	const panels = MODES.map((mode) => ({ mode, rows: rowsOf(missesOf(findings, mode)) }));
	const bars = panels.flatMap(({ rows }) =>
		rows.flatMap(({ summary }) => (summary ? [summary.low, summary.high] : []))
	);
	const x = scaleOver(bars, 'estimate minus measured, cm', 6);
	return section({
		id: 'by-group',
		title: 'Errors by dataset and phase',
		reading: `Right of zero the estimate was too thick. Early ice is what measured ${EARLY_m * 100} cm or less while the winter’s ice was still growing.`,
		key: key(GROWTH, DECAY, BAR),
		panels: panels.map(({ mode, rows }) => panelOf(mode, rows, x)),
		table: {
			caption: 'Errors in cm by dataset and phase',
			head: ['', 'readings', 'bias', 'RMSE', 'four in five from', 'to'],
			rows: panels.flatMap(({ mode, rows }) =>
				rows.map(({ name, summary }) => [
					`${mode}, ${name}`,
					`${summary?.n ?? 0}`,
					...(['bias', 'rmse', 'low', 'high'] as const).map((of) =>
						number(summary?.[of] ?? null, 1)
					)
				])
			)
		}
	});
}

function rowsOf(misses: readonly Miss[]): ErrorRow[] {
	const datasets = [...new Set(misses.map(({ of }) => of.winter.dataset))];
	const named = datasets.map(
		(dataset) => [dataset, misses.filter(({ of }) => of.winter.dataset === dataset)] as const
	);
	const groups = datasets.length > 1 ? [['all', misses] as const, ...named] : named;
	return groups.flatMap(([name, inside]) => {
		const growth = ofPhase(inside, 'growth');
		const early = growth.filter(({ of }) => of.reading.total_m <= EARLY_m);
		const row = (of: string, phase: ErrorRow['phase'], chosen: readonly Miss[]): ErrorRow => ({
			name: `${name}, ${of}`,
			phase,
			summary: summarize(errorsOf(chosen)),
			errors: []
		});
		return [
			row('growth', 'growth', growth),
			row('early', 'growth', early),
			row('decay', 'decay', ofPhase(inside, 'decay'))
		];
	});
}

function panelOf(mode: Mode, rows: readonly ErrorRow[], x: Scale): Panel {
	const says = rowsWords(rows, ROWS, (bias) => offset(bias, 'cm', THICK));
	return {
		title: mode,
		says,
		picture: rowsPlot(`Errors by dataset and phase, ${mode}. ${says}`, x, rows)
	};
}
