import { degreeDays, degreeDaysValue } from '../format/degrees.ts';
import type { Units } from '../units-setting.ts';
import type { AnyChart } from './attach.svelte.ts';
import type { Palette } from './palette.ts';
import type { SeriesDay } from './series.ts';
import { LAYOUT, timeAxis, valueAxis, type TimeSpan } from './time-axis.ts';
import { tooltip } from './tooltip.ts';

export interface DegreeDaysInput {
	days: readonly SeriesDay[];
	span: TimeSpan;
	units: Units;
}

/** Frost and thaw added up since freeze-up, as two lines told apart by their dashes too. */
export function degreeDaysChart(input: DegreeDaysInput, palette: Palette): AnyChart {
	const frost = points(input, 'frost', (day) => day.fdd_degCd);
	const thaw = points(input, 'thaw', (day) => day.tdd_degCd);
	const look = { pointRadius: 0, pointHitRadius: 0, borderWidth: 2 };
	return {
		type: 'line',
		data: {
			datasets: [
				{ ...look, data: frost, label: 'frost', borderColor: palette.deep },
				{ ...look, data: thaw, label: 'thaw', borderColor: palette.ink, borderDash: [2, 3] }
			]
		},
		options: {
			animation: false,
			maintainAspectRatio: false,
			layout: LAYOUT,
			interaction: { mode: 'x', intersect: false },
			scales: {
				x: timeAxis(input.span, palette),
				y: valueAxis({ suggestedMax: 10 }, palette)
			},
			plugins: { tooltip: tooltip(palette) }
		}
	};
}

function points(
	{ days, units }: DegreeDaysInput,
	label: string,
	pick: (day: SeriesDay) => number | null
) {
	return days.flatMap((day) => {
		const sum = pick(day);
		return sum === null
			? []
			: [{ x: day.on, y: degreeDaysValue(sum, units), says: `${label} ${degreeDays(sum, units)}` }];
	});
}
