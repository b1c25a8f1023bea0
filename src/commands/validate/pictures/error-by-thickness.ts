import type { Findings } from '../findings.ts';
import { evenBins } from './bins.ts';
import { binsTable, errorPanel } from './error-panel.ts';
import { errorsOf, missesOf, type Miss } from './errors.ts';
import { BAR, DECAY, GROWTH, key } from './key.ts';
import type { Markup } from './markup.ts';
import { scaleOver } from './scale.ts';
import { section } from './section.ts';
import { MODES } from './words.ts';

const BIN_cm = 10;

interface Against {
	id: string;
	title: string;
	reading: string;
	name: 'measured' | 'estimated';
	thicknessOf: (miss: Miss) => number;
}

const MEASURED: Against = {
	id: 'measured',
	title: 'Errors by measured thickness',
	reading:
		'Each small mark is a reading, each large one the mean of a bin of 10 cm with the bar of four in five errors. Above zero the estimate was too thick. Whatever is picked for having been measured thin was as a rule estimated thicker, and the other way round, even by an honest forecast: the next picture is free of that.',
	name: 'measured',
	thicknessOf: ({ measured_cm }) => measured_cm
};

const ESTIMATED: Against = {
	id: 'estimated',
	title: 'Errors by estimated thickness',
	reading:
		'The same errors by what had been estimated: how far off a reader of such an estimate was. An honest forecast keeps the means at zero here.',
	name: 'estimated',
	thicknessOf: ({ estimate_cm }) => estimate_cm
};

/** Errors against what was measured, and against what was estimated. */
export function errorsByThickness(findings: Findings): Markup[] {
	return [MEASURED, ESTIMATED].map((against) => oneOf(findings, against));
}

function oneOf(findings: Findings, { id, title, reading, name, thicknessOf }: Against): Markup {
	const panels = MODES.map((mode) => {
		const misses = missesOf(findings, mode);
		return { title: mode, misses, bins: evenBins(misses, thicknessOf, BIN_cm) };
	});
	const all = panels.flatMap(({ misses }) => misses);
	const ends = panels.flatMap(({ bins }) => bins.map(({ at }) => at + BIN_cm / 2));
	const x = scaleOver(ends, `${name}, cm`);
	const errors_cm = errorsOf(all);
	return section({
		id: `by-${id}`,
		title,
		reading,
		key: key(GROWTH, DECAY, BAR),
		panels: panels.map((panel) =>
			errorPanel({ ...panel, x, errors_cm, acrossOf: thicknessOf, unit: `cm ${name}` })
		),
		table: binsTable(`Errors in cm by ${name} thickness`, panels, `cm ${name}`)
	});
}
