import type { Findings } from '../findings.ts';
import { binomialBand } from './binomial-band.ts';
import { BAND, key } from './key.ts';
import { markup, type Markup } from './markup.ts';
import { plot, short } from './plot.ts';
import { panelsOf, type Ranks } from './ranks.ts';
import { shares, type Scale } from './scale.ts';
import { section, type Panel } from './section.ts';
import { counted, percent } from './words.ts';

const TENTHS = 10;

/** Where in their forecasts the readings fell, by tenths. */
export function rankHistogram(findings: Findings): Markup {
	const panels = panelsOf(findings).map((ranks) => ({ ...ranks, parts: tenthsOf(ranks.ranks) }));
	const tallest = Math.max(0.2, ...panels.flatMap(({ parts }) => parts));
	const y: Scale = { ...shares('share of readings'), to: Math.ceil(tallest * 10) / 10 };
	const ticks = Array.from({ length: Math.round(y.to * 10) + 1 }, (_, tenth) => tenth / 10);
	return section({
		id: 'ranks',
		title: 'Where in the forecast did the readings fall?',
		reading:
			'Each forecast is cut into ten parts that are equally likely. In an honest one each part catches a tenth of the readings. High ends mean that forecasts are too sure, a high middle that they are too wide, a slope that they are too thick (high on the left) or too thin.',
		key: key(BAND),
		panels: panels.map((panel) => panelOf(panel, { ...y, ticks })),
		table: {
			caption: 'Share of readings in each tenth of their forecast, the thinnest first',
			head: ['', ...Array.from({ length: TENTHS }, (_, index) => nameOf(index))],
			rows: panels.map(({ title, ranks, parts }) => [
				`${title}, ${counted(ranks.length, 'reading')}`,
				...parts.map(percent)
			])
		}
	});
}

/** Shares of the ranks in ten equal parts; none at all of no ranks. */
export function tenthsOf(ranks: readonly number[]): number[] {
	if (ranks.length === 0) return [];
	return Array.from({ length: TENTHS }, (_, index) => {
		const inside = ranks.filter((rank) => tenthOf(rank) === index);
		return inside.length / ranks.length;
	});
}

function tenthOf(rank: number): number {
	return Math.min(TENTHS - 1, Math.floor(rank * TENTHS));
}

function nameOf(index: number): string {
	return `${index * 10} to ${index * 10 + 10} %`;
}

function panelOf({ title, ranks, parts }: Ranks & { parts: number[] }, y: Scale): Panel {
	const says = wordsOf(parts);
	return {
		title,
		says,
		picture: plot({
			label: `Ranks, ${title}. ${says}`,
			x: shares('place in the forecast, thin to thick'),
			y,
			draw: (place) => {
				const { low, high } = binomialBand(ranks.length, 1 / TENTHS);
				const width = (place.right - place.left) / TENTHS;
				return [
					parts.map((part, index) => {
						const [left, top] = [place.left + index * width, place.y(part)];
						return markup`<rect class="column" x="${short(left + 2)}" y="${short(top)}" width="${short(width - 4)}" height="${short(place.foot - top)}"/>`;
					}),
					markup`<rect class="band" x="${place.left}" y="${short(place.y(high))}" width="${place.right - place.left}" height="${short(place.y(low) - place.y(high))}"/>`,
					markup`<path class="ideal" d="M${place.left} ${short(place.y(0.1))}H${place.right}"/>`
				];
			}
		})
	};
}

function wordsOf(parts: readonly number[]): string {
	const [thinnest, thickest] = [parts[0], parts.at(-1)];
	if (thinnest === undefined || thickest === undefined) return 'No reading was foretold.';
	const lower = parts.slice(0, TENTHS / 2).reduce((sum, part) => sum + part, 0);
	return `${percent(thinnest)} of the readings fell into the thinnest tenth, ${percent(thickest)} into the thickest, ${percent(lower)} into the thinner half.`;
}
