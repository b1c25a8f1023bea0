import {
	BarController,
	BarElement,
	Chart,
	Filler,
	LinearScale,
	LineController,
	LineElement,
	PointElement,
	TimeScale,
	Tooltip,
	_adapters
} from 'chart.js';
import 'chartjs-adapter-date-fns';
import Annotation from 'chartjs-plugin-annotation';
import { midnightOf } from './midnight.ts';

// Only what the pictures use: the rest of the library stays off the page.
Chart.register(
	BarController,
	BarElement,
	Filler,
	LinearScale,
	LineController,
	LineElement,
	PointElement,
	TimeScale,
	Tooltip,
	Annotation
);

_adapters._date.override({
	parse: (value) => (typeof value === 'string' ? midnightOf(value) : Number(value))
});

export { Chart };
