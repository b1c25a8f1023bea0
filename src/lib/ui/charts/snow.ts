import { depth, lengthValue } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import type { AnyChart } from './attach.svelte.ts';
import { asOfLine } from './day-line.ts';
import type { Palette } from './palette.ts';
import type { SeriesDay } from './series.ts';
import { LAYOUT, timeAxis, valueAxis, type TimeSpan } from './time-axis.ts';
import { tooltip } from './tooltip.ts';

export interface SnowInput {
	days: readonly SeriesDay[];
	/** Days past the last of these, with the median of what may come. */
	coming?: readonly SeriesDay[];
	span: TimeSpan;
	units: Units;
}

/** Dry snow on the ice, a bar a day. */
export function snowChart(
	{ days, coming = [], span, units }: SnowInput,
	palette: Palette
): AnyChart {
	const last = days.at(-1);
	const ahead = last && coming.length > 0 ? [last] : [];
	return {
		type: 'bar',
		data: {
			datasets: [
				{
					...bars(days, 'snow', units),
					backgroundColor: palette.white,
					borderColor: palette.soft,
					borderWidth: { top: 1.5 }
				},
				{
					...bars(coming, 'snow to come', units),
					backgroundColor: palette.sheet,
					borderColor: palette.soft,
					borderWidth: { top: 1 }
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
			plugins: {
				tooltip: tooltip(palette),
				annotation: { annotations: asOfLine(ahead, span, palette) }
			}
		}
	};
}

function bars(days: readonly SeriesDay[], name: string, units: Units) {
	const data = days.map(({ on, snow_m }) => ({
		x: on,
		y: lengthValue(snow_m, units),
		says: `${name} ${depth(snow_m, units)}`
	}));
	return { label: name, data, grouped: false, barPercentage: 1, categoryPercentage: 1 };
}
