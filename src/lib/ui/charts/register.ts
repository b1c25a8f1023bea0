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
	Tooltip
} from 'chart.js';
import 'chartjs-adapter-date-fns';
import Annotation from 'chartjs-plugin-annotation';

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

export { Chart };
