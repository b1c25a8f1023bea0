import type { CsvPlan } from './plan.ts';
import { isDoubtfulCode, isMissingCode, readNumber, TRACE } from '../cells/numbers.ts';
import { outsideOf, withoutNoise } from '../cells/plausible.ts';
import { inQuotes } from '../cells/quote.ts';
import { toSi, type ValueRole } from '../cells/units.ts';

/** The values of a row in the model's units; `null` is missing. Snow depth and water apart. */
export interface RowValues {
	air: number | null;
	min: number | null;
	max: number | null;
	precipitation: number | null;
	snowfall: number | null;
	landSnow: number | null;
	wind: number | null;
}

/** Mean and range may come from different readings, and are rounded. */
const RANGE_TOLERANCE_K = 0.6;

/** The values of a row, or the reason why the row can't be used. */
export function rowValues(cells: readonly string[], plan: CsvPlan): RowValues | string {
	const values = noValues();
	let rain: number | null | undefined;
	for (const { index, header, role, unit } of plan.columns) {
		const read = cellValue(cells[index] ?? '', role, unit, plan);
		if (typeof read === 'string') return `column ${inQuotes(header)}: ${read}`;
		if (unit.endsWith('rain')) rain = read;
		else if (role !== 'snowfall' || unit.endsWith('water')) values[role] = read ?? values[role];
		else values.snowfall ??= read;
	}
	if (rain !== undefined) {
		values.precipitation =
			rain === null || values.snowfall === null ? null : rain + values.snowfall;
	}
	return plan.time.pace.step === 'daily' ? (contradiction(values) ?? values) : withMean(values);
}

/** True where a row holds no value at all: it is a gap. */
export function isGap(values: RowValues): boolean {
	return Object.values(values).every((value) => value === null);
}

function noValues(): RowValues {
	return {
		air: null,
		min: null,
		max: null,
		precipitation: null,
		snowfall: null,
		landSnow: null,
		wind: null
	};
}

function cellValue(
	text: string,
	role: ValueRole,
	unit: string,
	{ decimal, time }: CsvPlan
): number | null | string {
	if (isMissingCode(text, unit.startsWith('0.1'))) return null;
	const isTemperature = role === 'air' || role === 'min' || role === 'max';
	if (TRACE.test(text) && !isTemperature && role !== 'wind') return 0;
	const { value, reason } = readNumber(text, decimal);
	if (reason !== null) return reason;
	if (value === null) return null;
	const { step, step_s } = time.pace;
	const si = toSi(role, unit, value, step_s / 3600);
	const settled = withoutNoise(role, si);
	const range = outsideOf(role, settled, step);
	if (range === null) return settled;
	if (isDoubtfulCode(value)) return null;
	return `${inQuotes(text)} (${unit}) is not ${range}; ${remedy(isTemperature, value)}`;
}

function remedy(isTemperature: boolean, value: number): string {
	return !isTemperature && value < 0
		? 'if it stands for "none" write 0, if for "not measured" leave it empty'
		: 'correct it, leave it empty, or choose another unit for the column';
}

function contradiction({ air, min, max }: RowValues): string | null {
	if (min !== null && max !== null && min > max) {
		return `the lowest temperature ${show(min)} is above the highest ${show(max)}; swap or correct them`;
	}
	const isBelow = air !== null && min !== null && air < min - RANGE_TOLERANCE_K;
	const isAbove = air !== null && max !== null && air > max + RANGE_TOLERANCE_K;
	if (!isBelow && !isAbove) return null;
	const end = isBelow ? `below the lowest ${show(min)}` : `above the highest ${show(max ?? 0)}`;
	return `the mean temperature ${show(air)} is ${end}; correct one of them`;
}

function show(air_degC: number): string {
	return `${Math.round(air_degC * 10) / 10} °C`.replace('-', '−');
}

/** An hour between its lowest and highest is taken in the middle: its range is small. */
function withMean(values: RowValues): RowValues {
	const { air, min, max } = values;
	return air === null && min !== null && max !== null
		? { ...values, air: (min + max) / 2 }
		: values;
}
