import type { ColumnGuess, CsvOptions, CsvPreview } from './contract.ts';
import type { Table } from './plan.ts';
import { tryCsv } from './trial.ts';
import { DATE_PARTS } from '../cells/units.ts';

const SHOWN_ROWS = 10;
const SAMPLES = 5;

/** What an import would take each column for, from the first 64 kB of a file. */
export function previewCsv(head: Uint8Array, options: CsvOptions): CsvPreview {
	const { plan, problems, warnings, table, head: read } = tryCsv(head, options);
	const rows = table?.layout.rows ?? [];
	return {
		ok: plan !== null,
		problems,
		encoding: read.encoding,
		delimiter: table?.reading.delimiter ?? ',',
		decimal: table?.decimal ?? '.',
		headerLine: table?.layout.headerLine ?? 0,
		step: table?.time.plan?.pace.step ?? 'daily',
		dateForm: table?.time.form ?? '',
		columns: table ? guesses(table, options.columns ?? []) : [],
		rows: rows.slice(0, SHOWN_ROWS).map(({ cells }) => cells),
		warnings: table ? [...warnings, ...paceWarnings(table)] : warnings
	};
}

function guesses(table: Table, corrections: readonly ColumnGuess[]): ColumnGuess[] {
	const { header, rows } = table.layout;
	return header.map((name, index) => {
		const sample = rows.slice(0, SAMPLES).map(({ cells }) => cells[index] ?? '');
		const isChosen = corrections.some((correction) => correction.index === index);
		const guess = guessOf(table, index);
		return { index, header: name, sample, ...guess, why: isChosen ? 'chosen' : guess.why };
	});
}

type Guess = Pick<ColumnGuess, 'role' | 'unit' | 'why'>;

function guessOf({ time, columns, left, headings }: Table, index: number): Guess {
	const value = columns.find((column) => column.index === index);
	const why = headings[index]?.why ?? '';
	if (value) return { role: value.role, unit: value.unit, why };
	const dates = time.columns?.date ?? [];
	if (dates.includes(index)) {
		const part = dates.length > 1 ? (DATE_PARTS[dates.indexOf(index)] ?? null) : null;
		const hasClock =
			dates.length === 1 && time.columns?.clock === null && time.plan?.pace.step === 'hourly';
		return { role: hasClock ? 'time' : 'date', unit: part ?? time.form, why: 'by its dates' };
	}
	if (time.columns?.clock === index)
		return { role: 'clock', unit: null, why: 'by its times of day' };
	return { role: 'ignore', unit: null, why: left.get(index) ?? why };
}

function paceWarnings({ time: { plan } }: Table): string[] {
	if (!plan || plan.pace.step === 'daily') return [];
	const { step_s, isEven } = plan.pace;
	const warnings = [];
	if (step_s > 3600) {
		warnings.push(
			`the rows are ${step_s / 3600} hours apart: each stands for the hours up to the next, its precipitation spread over them`
		);
	}
	if (!isEven && step_s < 3600) {
		warnings.push(
			'the rows come at uneven times: within an hour temperatures are averaged and precipitation is added up'
		);
	}
	return warnings;
}
