import type { Findings } from '../findings.ts';
import { binomialBand } from './binomial-band.ts';
import { BAND, INSIDE, key, OUTSIDE } from './key.ts';
import { line, mark, type Point } from './marks.ts';
import { markup, type Markup } from './markup.ts';
import { plot } from './plot.ts';
import { panelsOf, type Ranks } from './ranks.ts';
import { shares } from './scale.ts';
import { section, type Panel } from './section.ts';
import { counted, number, percent } from './words.ts';

const QUANTILES = Array.from({ length: 19 }, (_, index) => (index + 1) / 20);

interface Step {
	quantile: number;
	/** Share of readings below the quantile of their forecast. */
	share: number;
	low: number;
	high: number;
	isOutside: boolean;
}

/** Whether a bound of so many percent is undercut in so many percent of cases. */
export function reliability(findings: Findings): Markup {
	const panels = panelsOf(findings).map((ranks) => ({ ...ranks, steps: stepsOf(ranks.ranks) }));
	return section({
		id: 'reliability',
		title: 'Do the bounds hold what they say?',
		reading:
			'Each forecast is a distribution. Across: one of its quantiles, such as the lower bound at 10 %. Upwards: the share of readings that were thinner than that. On the slanting line both are the same. Above it the ice was thinner than foretold more often than it should be: the dangerous side. The band would hold nine in ten such shares if readings were independent; those of one winter are not, so that it is too narrow.',
		key: key(BAND, INSIDE, OUTSIDE),
		panels: panels.map(panelOf),
		table: {
			caption: 'Share of readings below each quantile of their forecast, and the band of chance',
			head: ['', ...QUANTILES.map(percent)],
			rows: panels.map(({ title, ranks, steps }) => [
				`${title}, ${counted(ranks.length, 'reading')}`,
				...steps.map(
					({ share, low, high }) =>
						`${percent(share)} (${number(low * 100, 0)} to ${number(high * 100, 0)})`
				)
			])
		}
	});
}

export function stepsOf(ranks: readonly number[]): Step[] {
	if (ranks.length === 0) return [];
	return QUANTILES.map((quantile) => {
		const share = ranks.filter((rank) => rank < quantile).length / ranks.length;
		const { low, high } = binomialBand(ranks.length, quantile);
		return { quantile, share, low, high, isOutside: share < low || share > high };
	});
}

function panelOf({ title, steps }: Ranks & { steps: Step[] }): Panel {
	const says = wordsOf(steps);
	return {
		title,
		says,
		picture: plot({
			label: `Reliability, ${title}. ${says}`,
			x: shares('quantile of the forecast'),
			y: shares('readings below it'),
			height: 300,
			draw: ({ x, y }) => {
				const edge = (at: 'low' | 'high'): Point[] =>
					steps.map((step) => [x(step.quantile), y(step[at])]);
				const band = [...edge('low'), ...edge('high').toReversed()];
				return [
					steps.length > 0 ? markup`<path class="band" d="${line(band)}Z"/>` : null,
					markup`<path class="ideal" d="${line([
						[x(0), y(0)],
						[x(1), y(1)]
					])}"/>`,
					steps.map(({ quantile, share, isOutside }) =>
						mark('growth', [x(quantile), y(share)], isOutside ? 'outside' : 'inside')
					)
				];
			}
		})
	};
}

function wordsOf(steps: readonly Step[]): string {
	const at = (quantile: number) =>
		steps.find((step) => Math.abs(step.quantile - quantile) < 1e-9)?.share ?? null;
	if (steps.length === 0) return 'No reading was foretold.';
	const outside = steps.filter(({ isOutside }) => isOutside).length;
	return `${percent(at(0.1))} were thinner than the 10 % bound, ${percent(at(0.5))} thinner than the estimate, ${percent(at(0.95))} thinner than the 95 % bound; ${outside} of ${steps.length} shares lie outside the band.`;
}
