import type { Chart, ChartConfiguration } from 'chart.js';
import type { Attachment } from 'svelte/attachments';
import { MediaQuery } from 'svelte/reactivity';
import { readPalette, type Palette } from './palette.ts';

/** Any kind of chart, with points of our own. */
export type AnyChart = ChartConfiguration<'line' | 'bar', unknown[]>;

// Asked for while the page is still waking, so that no chart has to wait for it afterwards.
if (typeof document !== 'undefined') void import('./register.ts').catch(() => {});

const dark = new MediaQuery('prefers-color-scheme: dark');

/**
 * Draws a chart on a canvas and keeps it in step with what `configure` reads and with the
 * system's colours. The library arrives after the page, once the type it writes with is there.
 */
export function drawn(configure: (palette: Palette) => AnyChart): Attachment<HTMLCanvasElement> {
	return (canvas) => {
		let library = $state.raw<typeof Chart>();
		let chart: Chart<'line' | 'bar', unknown[]> | undefined;
		void Promise.all([import('./register.ts'), typeOf(canvas)])
			.then(([loaded]) => inTurn(loaded.Chart))
			.then((loaded) => {
				library = loaded;
			});
		$effect(() => {
			void dark.current;
			if (!library) return;
			const { data, options, ...rest } = configure(readPalette(canvas));
			if (!chart) {
				// No chart is animated: it is painted when this returns.
				chart = new library(canvas, { data, options: options ?? {}, ...rest });
				performance.mark('chart-drawn');
				return;
			}
			chart.data = data;
			chart.options = options ?? {};
			chart.update('none');
		});
		return () => chart?.destroy();
	};
}

let turn: Promise<unknown> = Promise.resolve();

/** One chart after the other, so that the first is on the screen before the next is drawn. */
function inTurn<Value>(value: Value): Promise<Value> {
	const mine = turn.then(() => value);
	turn = mine.then(painted);
	return mine;
}

/** Settles with the next frame; at once where there is none to wait for. */
function painted(): Promise<void> {
	return new Promise((done) => {
		const after = () => setTimeout(done, 0);
		if (document.hidden) after();
		else requestAnimationFrame(after);
	});
}

/** Settles once both weights of the page's type are there; one that can't come is done without. */
function typeOf(canvas: HTMLCanvasElement): Promise<unknown> {
	const { fontFamily } = getComputedStyle(canvas);
	const weights = [400, 700].map((weight) => document.fonts.load(`${weight} 13px ${fontFamily}`));
	return Promise.allSettled(weights);
}
