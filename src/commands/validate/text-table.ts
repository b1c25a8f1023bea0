import type { PhaseScores } from './groups.ts';
import type { IceOutScore } from './ice-out.ts';
import type { Report } from './report.ts';
import type { Score } from './scores.ts';

const LABEL_WIDTH = 54;
const CELL_WIDTH = 8;

type Column = [head: string, cell: (score: Score) => string];

const THICKNESS: Column[] = [
	['n', ({ n, unanswered }) => (unanswered > 0 ? `${n}(-${unanswered})` : `${n}`)],
	['rmse', ({ rmse_cm }) => fixed(rmse_cm, 1)],
	['bias', ({ bias_cm }) => fixed(bias_cm, 1)],
	['crps', ({ crps_cm }) => fixed(crps_cm, 2)],
	['cov90', ({ coverage90 }) => fixed(coverage90, 2)],
	['below', ({ belowLower }) => fixed(belowLower, 2)]
];

const LAYERS: Column[] = [
	['white', ({ white_rmse_cm }) => fixed(white_rmse_cm, 1)],
	['w.bias', ({ white_bias_cm }) => fixed(white_bias_cm, 1)],
	['w.mean', ({ whiteSpread_cm }) => fixed(whiteSpread_cm, 1)],
	['snow', ({ snow_rmse_cm }) => fixed(snow_rmse_cm, 1)]
];

const LEGEND =
	'cm; bias is estimate minus measured; cov90 and below are shares; w.mean is what the measured mean of white ice everywhere would score';

/** The report for a person: one line a mode, group and phase. */
export function textTable(report: Report): string {
	return [
		`${report.winters} winters scored; not scored: ${leftOutLine(report)}`,
		...report.notes,
		LEGEND,
		'',
		...modeTable(report),
		'',
		...baselineTable(report),
		'',
		...iceOutTable(report)
	].join('\n');
}

function leftOutLine({ leftOut }: Report): string {
	const some = Object.entries(leftOut).filter(([, count]) => count > 0);
	if (some.length === 0) return 'no reading';
	return some.map(([reason, count]) => `${count} ${reason}`).join(', ');
}

function modeTable(report: Report): string[] {
	const columns = [...THICKNESS, ...LAYERS];
	const head = row(
		'Modes',
		columns.map(([name]) => name)
	);
	return [
		head,
		...Object.entries(report.modes).flatMap(([mode, groups]) =>
			Object.entries(groups).flatMap(([group, scores]) => [
				...phaseRows(`${mode} ${group}`, scores, columns),
				...scores.growth.thirds.map((third) =>
					scoreRow(
						`${mode} ${group} growth ${third.from_cm.toFixed(0)}-${third.to_cm.toFixed(0)}`,
						third,
						columns
					)
				)
			])
		)
	];
}

function baselineTable({ baselines }: Report): string[] {
	const head = row(
		'Baselines on the same readings',
		THICKNESS.map(([name]) => name)
	);
	const rows = Object.entries(baselines).flatMap(([id, groups]) =>
		Object.entries(groups).flatMap(([group, scores]) =>
			phaseRows(`${id} ${group}`, scores, THICKNESS)
		)
	);
	return [head, ...rows];
}

function phaseRows(name: string, scores: PhaseScores, columns: Column[]): string[] {
	return (['growth', 'early', 'decay', 'both'] as const).map((phase) =>
		scoreRow(`${name} ${phase}`, scores[phase], columns)
	);
}

function scoreRow(label: string, score: Score, columns: Column[]): string {
	return row(
		label,
		columns.map(([, cell]) => cell(score))
	);
}

function iceOutTable(report: Report): string[] {
	const rows = Object.entries(report.modes).flatMap(([mode, groups]) =>
		Object.entries(groups).flatMap(([group, { iceOut }]) => [
			iceOutRow(`${mode} ${group}, at the largest reading`, iceOut),
			iceOutRow(`${mode} ${group}, 14 days later`, iceOut.after14),
			iceOutRow(`${mode} ${group}, 30 days later`, iceOut.after30)
		])
	);
	return [
		row('Ice-out, days; bias is foretold minus seen', ['n', 'mae', 'bias', 'cov80', 'never']),
		...rows
	];
}

function iceOutRow(label: string, score: IceOutScore): string {
	return row(label, [
		`${score.n}`,
		fixed(score.mae_d, 1),
		fixed(score.bias_d, 1),
		fixed(score.coverage80, 2),
		`${score.neverReached}`
	]);
}

function row(label: string, cells: readonly string[]): string {
	return label.padEnd(LABEL_WIDTH) + cells.map((cell) => cell.padStart(CELL_WIDTH)).join('');
}

function fixed(value: number | null, decimals: number): string {
	return value === null ? '-' : value.toFixed(decimals);
}
