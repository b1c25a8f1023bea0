import type { Findings } from '../findings.ts';
import { errorsOf, missesOf, ofPhase, type Miss } from './errors.ts';
import { DECAY, GROWTH, key } from './key.ts';
import { cloud, line } from './marks.ts';
import { markup, type Markup } from './markup.ts';
import { plot } from './plot.ts';
import { scaleOver } from './scale.ts';
import { section, type Panel } from './section.ts';
import { summarize } from './summary.ts';
import { counted, MODES, number, offset, PHASES, THICK, titled } from './words.ts';

/** Every estimate against what was drilled. */
export function scatter(findings: Findings): Markup {
	const panels = MODES.map((mode) => ({ mode, misses: missesOf(findings, mode) }));
	const all = panels.flatMap(({ misses }) => misses);
	const most_cm = all.flatMap(({ estimate_cm, measured_cm }) => [estimate_cm, measured_cm]);
	return section({
		id: 'scatter',
		title: 'Estimate against measured',
		reading:
			'A mark a reading: across what was measured, upwards what had been estimated. On the slanting line both agree; above it the estimate was too thick.',
		key: key(GROWTH, DECAY),
		panels: panels.map(({ mode, misses }) => panelOf(mode, misses, most_cm)),
		table: {
			caption: 'Errors in cm, estimate minus measured',
			head: ['', 'readings', 'RMSE', 'bias', 'four in five from', 'to'],
			rows: panels.flatMap(({ mode, misses }) =>
				PHASES.map((phase) => {
					const found = summarize(errorsOf(ofPhase(misses, phase)));
					return [
						`${mode}, ${phase}`,
						number(found?.n ?? 0, 0),
						number(found?.rmse ?? null, 1),
						number(found?.bias ?? null, 1),
						number(found?.low ?? null, 1),
						number(found?.high ?? null, 1)
					];
				})
			)
		}
	});
}

function panelOf(title: string, misses: readonly Miss[], most_cm: readonly number[]): Panel {
	const says = PHASES.map((phase) => wordsOf(phase, ofPhase(misses, phase))).join('. ');
	const across = scaleOver(most_cm, 'measured, cm');
	const upwards = scaleOver(most_cm, 'estimated, cm');
	return {
		title,
		says: `${says}.`,
		picture: plot({
			label: `Estimate against measured, ${title}. ${says}.`,
			x: across,
			y: upwards,
			height: 320,
			draw: ({ x, y }) => [
				PHASES.map((phase) =>
					cloud(
						phase,
						ofPhase(misses, phase).map((miss) => [x(miss.measured_cm), y(miss.estimate_cm)])
					)
				),
				markup`<path class="ideal" d="${line([
					[x(0), y(0)],
					[x(across.to), y(across.to)]
				])}"/>`
			]
		})
	};
}

function wordsOf(phase: string, misses: readonly Miss[]): string {
	const found = summarize(errorsOf(misses));
	if (found === null) return `${titled(phase)}: no reading`;
	return `${titled(phase)}: ${counted(found.n, 'reading')}, in the mean ${offset(found.bias, 'cm', THICK)}, RMSE ${number(found.rmse, 1)} cm`;
}
