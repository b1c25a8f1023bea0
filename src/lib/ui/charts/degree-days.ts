import { degreeDays, degreeDaysValue } from '../format/degrees.ts';
import type { Units } from '../units-setting.ts';
import type { AnyChart } from './attach.svelte.ts';
import type { Palette } from './palette.ts';
import type { SeriesDay } from './series.ts';
import { asOfLine } from './day-line.ts';
import { LAYOUT, timeAxis, valueAxis, type TimeSpan } from './time-axis.ts';
import { tooltip } from './tooltip.ts';

export interface DegreeDaysInput {
	days: readonly SeriesDay[];
	/** Days past the last of these, with the mean of what may come. */
	coming?: readonly SeriesDay[];
	span: TimeSpan;
	units: Units;
}

/** Frost and thaw added up since freeze-up, as two lines told apart by their dashes too. */
export function degreeDaysChart(input: DegreeDaysInput, palette: Palette): AnyChart {
	const { days, coming = [], span, units } = input;
	const last = days.at(-1);
	const ahead = coming.length > 0 && last ? [last, ...coming] : [];
	const line = (of: readonly SeriesDay[], name: string, pick: Pick) => ({
		...LOOK,
		label: name,
		data: points(of, name, units, pick)
	});
	const frost = { borderColor: palette.deep };
	const thaw = { borderColor: palette.ink, borderDash: [2, 3] };
	const later = { borderWidth: 1.5, borderDash: [1, 5] };
	return {
		type: 'line',
		data: {
			datasets: [
				{ ...line(days, 'frost', fdd_degCd), ...frost },
				{ ...line(days, 'thaw', tdd_degCd), ...thaw },
				...(ahead.length > 0
					? [
							{ ...line(ahead, 'frost to come', fdd_degCd), ...frost, ...later },
							{ ...line(ahead, 'thaw to come', tdd_degCd), ...thaw, ...later }
						]
					: [])
			]
		},
		options: {
			animation: false,
			maintainAspectRatio: false,
			layout: LAYOUT,
			interaction: { mode: 'x', intersect: false },
			scales: {
				x: timeAxis(span, palette),
				y: valueAxis({ suggestedMax: 10 }, palette)
			},
			plugins: {
				tooltip: tooltip(palette),
				annotation: { annotations: asOfLine(ahead, span, palette) }
			}
		}
	};
}

type Pick = (day: SeriesDay) => number | null;

const LOOK = { pointRadius: 0, pointHitRadius: 0, borderWidth: 2 };
const fdd_degCd: Pick = (day) => day.fdd_degCd;
const tdd_degCd: Pick = (day) => day.tdd_degCd;

function points(days: readonly SeriesDay[], name: string, units: Units, pick: Pick) {
	return days.flatMap((day) => {
		const sum = pick(day);
		const says = `${name} ${degreeDays(sum, units)}`;
		return sum === null ? [] : [{ x: day.on, y: degreeDaysValue(sum, units), says }];
	});
}
