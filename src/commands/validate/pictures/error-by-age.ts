import { daysBetween } from '#lib/model/calendar.ts';
import type { Findings } from '../findings.ts';
import { binOf, type Bin } from './bins.ts';
import { binsTable, errorPanel } from './error-panel.ts';
import { missesOf, type Miss } from './errors.ts';
import { BAR, DECAY, GROWTH, key } from './key.ts';
import type { Markup } from './markup.ts';
import type { Scale } from './scale.ts';
import { section } from './section.ts';

/** Days since the reading before, first and last of each bin. */
const AGES_d = [
	[1, 7],
	[8, 14],
	[15, 21],
	[22, 35],
	[36, Infinity]
] as const;

/** How the hold of a reading wears off. */
export function errorsByAge(findings: Findings): Markup {
	const misses = missesOf(findings, 'recalibrated');
	const bins = AGES_d.map(([from, to], index): Bin => {
		const inside = misses.filter((miss) => age_d(miss) >= from && age_d(miss) <= to);
		return binOf(Number.isFinite(to) ? `${from} to ${to}` : `${from} and more`, index + 1, inside);
	});
	const panel = { title: 'recalibrated', bins };
	const x: Scale = {
		from: 0.5,
		to: AGES_d.length + 0.5,
		ticks: AGES_d.map((_, index) => index + 1),
		label: 'days since the last reading',
		textOf: (tick) => {
			const [from, to] = AGES_d[tick - 1] ?? [0, 0];
			return Number.isFinite(to) ? `${from}–${to}` : `${from}+`;
		}
	};
	return section({
		id: 'by-age',
		title: 'Errors by days since the last reading',
		reading:
			'Where this winter’s earlier readings are known: the mean error with the bar of four in five, by how long ago the last of them was taken.',
		key: key(GROWTH, DECAY, BAR),
		panels: [errorPanel({ ...panel, misses, x, errors_cm: spreadOf(bins), unit: 'days' })],
		table: binsTable('Errors in cm by days since the last reading', [panel], 'days')
	});
}

function age_d({ of }: Miss): number {
	return of.previous === null ? NaN : daysBetween(of.previous.on, of.reading.on);
}

function spreadOf(bins: readonly Bin[]): number[] {
	return bins.flatMap(({ errors }) =>
		[errors.growth, errors.decay].flatMap((each) => (each === null ? [] : [each.low, each.high]))
	);
}
