import type { PhaseScores } from '../groups.ts';
import type { Report } from '../report.ts';
import { markup, type Markup } from './markup.ts';
import { openTable, type Table } from './table.ts';
import { KNEW, MODES, number, percent } from './words.ts';

const SHOWN = ['growth', 'early', 'decay'] as const;

const COLUMNS = ['n', 'RMSE', 'bias', 'CRPS', 'in band', 'below'];

/** What each baseline does, in words. */
const LAWS: Record<string, string> = {
	alpha24: '2.4 √FDD',
	alpha17: '1.7 √FDD',
	alphaOtherLakes: '√FDD, mean coefficient of the other lakes',
	alphaOwn: '√FDD, the lake’s own mean coefficient',
	fromLastReading: 'from the last reading, own coefficient, less thaw',
	fromLastReadingFrostOnly: 'from the last reading, own coefficient, frost only',
	lastReading: 'the last reading unchanged'
};

/** The scores of the modes and of simple laws on the same readings. */
export function scoresTable({ modes, baselines }: Report): Markup {
	const groups = Object.keys(modes.prior);
	return markup`<section id="scores" aria-labelledby="scores-title">
<h2 id="scores-title">Scores</h2>
<p>In centimetres; bias is estimate minus measured. <i>In band</i> is the share inside 5 to 95 %, where 90 % would be right; <i>below</i> the share thinner than the lower bound, where 10 % would be. Simple laws stand below the three modes.</p>
<dl>${MODES.map((mode) => markup`<div><dt>${mode}</dt><dd>${KNEW[mode]}</dd></div>`)}</dl>
${groups.map((group) => openTable(tableOf(group, modes, baselines)))}
</section>
`;
}

function tableOf(group: string, modes: Report['modes'], baselines: Report['baselines']): Table {
	return {
		caption: group === 'all' ? 'All readings' : group,
		over: SHOWN.map((phase) => [phase, COLUMNS.length]),
		head: ['', ...SHOWN.flatMap(() => COLUMNS)],
		rows: [
			...MODES.flatMap((mode) => rowOf(mode, modes[mode][group])),
			...Object.entries(baselines).flatMap(([id, groups]) => rowOf(LAWS[id] ?? id, groups[group]))
		]
	};
}

function rowOf(name: string, scores: PhaseScores | undefined): string[][] {
	if (scores === undefined) return [];
	return [
		[
			name,
			...SHOWN.flatMap((phase) => {
				const { n, rmse_cm, bias_cm, crps_cm, coverage90, belowLower } = scores[phase];
				return [
					`${n}`,
					number(rmse_cm, 1),
					number(bias_cm, 1),
					number(crps_cm, 2),
					percent(coverage90),
					percent(belowLower)
				];
			})
		]
	];
}
