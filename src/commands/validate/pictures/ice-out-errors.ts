import type { Findings, Mode } from '../findings.ts';
import type { IceOutForecast } from '../ice-out.ts';
import { LEADS_d } from '../ice-out.ts';
import { BAR, GROWTH, key } from './key.ts';
import type { Markup } from './markup.ts';
import { rowsPlot, rowsWords, type ErrorRow } from './rows-plot.ts';
import { scaleOver, type Scale } from './scale.ts';
import { section, type Panel } from './section.ts';
import { summarize } from './summary.ts';
import { LATE, MODES, number, offset, percent } from './words.ts';

interface Row extends ErrorRow {
	inside80: number | null;
}

/** How many days ice-out was off, by when it was foretold. */
export function iceOutErrors(findings: Findings): Markup {
	const panels = MODES.map((mode) => ({ mode, rows: rowsOf(findings[mode].iceOut) }));
	const all_d = panels.flatMap(({ rows }) => rows.flatMap(({ errors }) => errors));
	const x = scaleOver(all_d, 'foretold minus seen, days', 6);
	return section({
		id: 'ice-out',
		title: 'Ice-out',
		reading:
			'Days by which ice-out was off, with the weather as measured: foretold on the day of the winter’s thickest reading, and 14 and 30 days later. Right of zero it was foretold too late. A small mark a winter, the large one their mean.',
		key: key([GROWTH[0], 'mean'], BAR),
		panels: panels.map(({ mode, rows }) => panelOf(mode, rows, x)),
		table: {
			caption: 'Errors of ice-out in days, and how often it fell into the window of four in five',
			head: ['', 'winters', 'bias', 'RMSE', 'four in five from', 'to', 'inside the window'],
			rows: panels.flatMap(({ mode, rows }) =>
				rows.map(({ name, summary, inside80 }) => [
					`${mode}, ${name}`,
					`${summary?.n ?? 0}`,
					...(['bias', 'rmse', 'low', 'high'] as const).map((of) =>
						number(summary?.[of] ?? null, 1)
					),
					percent(inside80)
				])
			)
		}
	});
}

function rowsOf(forecasts: readonly IceOutForecast[]): Row[] {
	const datasets = [...new Set(forecasts.map(({ winter }) => winter.dataset))];
	const groups = datasets.length > 1 ? [null, ...datasets] : [null];
	return groups.flatMap((dataset) =>
		LEADS_d.map((lead_d): Row => {
			const inside = forecasts.filter(
				(each) => each.lead_d === lead_d && (dataset === null || each.winter.dataset === dataset)
			);
			const errors = inside.map(({ error_d }) => error_d);
			const hits = inside.filter(({ isInside80 }) => isInside80).length;
			const when = lead_d === 0 ? 'at the thickest reading' : `${lead_d} days later`;
			return {
				name: `${dataset ?? 'all'}, ${when}`,
				phase: 'growth',
				summary: summarize(errors),
				errors,
				inside80: inside.length === 0 ? null : hits / inside.length
			};
		})
	);
}

function panelOf(mode: Mode, rows: readonly Row[], x: Scale): Panel {
	const inside = percent(rows[0]?.inside80 ?? null);
	const says = `${rowsWords(rows, LEADS_d.length, (bias) => offset(bias, 'days', LATE))} Inside the window at the thickest reading: ${inside}, where 80 % would be right.`;
	return { title: mode, says, picture: rowsPlot(`Ice-out, ${mode}. ${says}`, x, rows) };
}
