import { depth, lengthValue } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import type { AnyChart } from './attach.svelte.ts';
import type { Palette } from './palette.ts';
import type { SeriesDay } from './series.ts';
import { LAYOUT, timeAxis, valueAxis, type TimeSpan } from './time-axis.ts';
import { tooltip } from './tooltip.ts';

export interface SnowInput {
	days: readonly SeriesDay[];
	span: TimeSpan;
	units: Units;
}

/** Dry snow on the ice, a bar a day. */
export function snowChart({ days, span, units }: SnowInput, palette: Palette): AnyChart {
	return {
		type: 'bar',
		data: {
			datasets: [
				{
					label: 'snow',
					data: days.map((day) => ({
						x: day.on,
						y: lengthValue(day.snow_m, units),
						says: `snow ${depth(day.snow_m, units)}`
					})),
					backgroundColor: palette.white,
					borderColor: palette.soft,
					borderWidth: { top: 1.5 },
					barPercentage: 1,
					categoryPercentage: 1
				}
			]
		},
		options: {
			animation: false,
			maintainAspectRatio: false,
			layout: LAYOUT,
			interaction: { mode: 'x', intersect: false },
			scales: {
				x: timeAxis(span, palette),
				y: valueAxis({ suggestedMax: lengthValue(0.05, units) }, palette)
			},
			plugins: { tooltip: tooltip(palette) }
		}
	};
}
