import { WORDS } from '../cells/role-words.ts';
import type { ValueColumn } from './chosen-columns.ts';
import type { Heading } from '../cells/header-roles.ts';
import { readNumber, isMissingCode, type Decimal } from '../cells/numbers.ts';
import { inQuotes } from '../cells/quote.ts';
import type { RowProblem } from './problem.ts';
import type { CsvRecord } from './records.ts';
import { isTemperatureRole } from '../cells/units.ts';

/** Columns whose unit is settled, and what had to be assumed for it. */
export interface SettledUnits {
	columns: (ValueColumn & { unit: string })[];
	left: Map<number, string>;
	problems: RowProblem[];
	warnings: string[];
}

/** The unit of each column: chosen, stated, or told by the values; what can't be told is left out. */
export function settleUnits(
	columns: readonly ValueColumn[],
	headings: readonly Heading[],
	rows: readonly CsvRecord[],
	decimal: Decimal,
	headerLine: number
): SettledUnits {
	const settled: SettledUnits = { columns: [], left: new Map(), problems: [], warnings: [] };
	const line = Math.max(1, headerLine);
	const temperature = temperatureUnit(columns, headings, rows, decimal);
	if ('reason' in temperature) settled.problems.push({ line, reason: temperature.reason });
	else if (temperature.warning) settled.warnings.push(temperature.warning);
	const fallback = 'unit' in temperature ? temperature.unit : '°C';
	for (const column of columns) {
		const unknown = column.unit === null ? (headings[column.index]?.unknownUnit ?? null) : null;
		if (isTemperatureRole(column.role)) {
			if (unknown) settled.problems.push({ line, reason: unknownUnit(column, unknown) });
			settled.columns.push({ ...column, unit: column.unit ?? fallback });
		} else settleOther(settled, column, unknown, fallback === '°F');
	}
	return settled;
}

function settleOther(
	settled: SettledUnits,
	column: ValueColumn,
	unknown: string | null,
	isImperial: boolean
): void {
	const assumed = isImperial ? IMPERIAL[column.role] : METRIC[column.role];
	const unit = column.unit ?? (unknown === null ? assumed : undefined);
	if (unit === undefined) {
		settled.left.set(column.index, 'its unit is not known');
		settled.warnings.push(
			unknown === null
				? `column ${inQuotes(column.header)} gives no unit for ${WORDS[column.role]} and is left out; choose its unit to use it`
				: `${unknownUnit(column, unknown)}; it is left out until then`
		);
		return;
	}
	if (column.unit === null) {
		settled.warnings.push(
			`column ${inQuotes(column.header)} gives no unit; ${unit} is assumed, choose another if that is wrong`
		);
	}
	settled.columns.push({ ...column, unit });
}

/** Only precipitation goes by one unit wherever degrees Celsius are used. */
const METRIC: Readonly<Record<string, string>> = { precipitation: 'mm' };
const IMPERIAL: Readonly<Record<string, string>> = {
	precipitation: 'in',
	snowfall: 'in',
	landSnow: 'in'
};

function unknownUnit({ header }: ValueColumn, unit: string): string {
	return `column ${inQuotes(header)}: the unit ${inQuotes(unit)} is not known; choose its unit`;
}

type Told = { unit: string; warning: string | null } | { reason: string };

/** One unit for the temperature columns that state none. */
function temperatureUnit(
	columns: readonly ValueColumn[],
	headings: readonly Heading[],
	rows: readonly CsvRecord[],
	decimal: Decimal
): Told {
	const temperatures = columns.filter(({ role }) => isTemperatureRole(role));
	const stated = temperatures.find(({ unit }) => unit !== null)?.unit;
	const open = temperatures.filter(
		({ unit, index }) => unit === null && !headings[index]?.unknownUnit
	);
	const [first] = open;
	if (stated) {
		const warning = `the temperature columns without a unit are taken as ${stated}, as the others are`;
		return { unit: stated, warning: first ? warning : null };
	}
	if (!first) return { unit: '°C', warning: null };
	const values = open.flatMap((column) => numbersIn(rows, column, decimal));
	const told = byValues(first.header, values, warmSnow(columns, rows, decimal, first.index));
	const isInches = headings.some(
		({ unit }) => unit === 'in' || unit === 'mph' || unit === 'in water'
	);
	if (isInches && 'unit' in told && told.unit === '°C') {
		return {
			reason: `column ${inQuotes(first.header)} gives no unit beside columns in inches; choose °C or °F`
		};
	}
	return told;
}

/** A number of the file, and where it stands. */
interface Seen {
	value: number;
	header: string;
	line: number;
}

function byValues(header: string, seen: readonly Seen[], warmSnowDays: number): Told {
	const column = `column ${inQuotes(header)}`;
	const values = seen.map(({ value }) => value);
	const highest = values.reduce((most, value) => Math.max(most, value), -Infinity);
	const lowest = values.reduce((least, value) => Math.min(least, value), Infinity);
	if (values.length > 0 && lowest >= 180 && highest <= 335) {
		return { unit: 'K', warning: `${column} gives no unit; its values can only be kelvin` };
	}
	if (highest > 135 || lowest < -105) {
		const wild = at(seen, highest > 135 ? highest : lowest);
		return {
			reason: `${wild.column}: ${wild.value} is neither °C nor °F; choose its unit, perhaps 0.1 °C, or mend line ${wild.line}`
		};
	}
	const hot = values.filter((value) => value > 45).length;
	if (hot >= 3)
		return {
			unit: '°F',
			warning: `${column} gives no unit; values up to ${highest} can only be °F`
		};
	if (warmSnowDays >= 3) {
		return {
			unit: '°F',
			warning: `${column} gives no unit; it snows at values over 8, so it is taken as °F`
		};
	}
	if (hot > 0) {
		const hottest = at(seen, highest);
		return {
			reason: `${hottest.column}: ${highest} is too hot for °C, the rest fits it; choose °C or °F, or mend line ${hottest.line}`
		};
	}
	return {
		unit: '°C',
		warning: `${column} gives no unit; °C is assumed, choose °F if that is wrong`
	};
}

/** Where a value stands first. */
function at(seen: readonly Seen[], value: number) {
	const found = seen.find((each) => each.value === value);
	return { value, column: `column ${inQuotes(found?.header ?? '')}`, line: found?.line ?? 1 };
}

/** Rows on which snow fell at more than 8, and at least a quarter of all rows with snow: else 0. */
function warmSnow(
	columns: readonly ValueColumn[],
	rows: readonly CsvRecord[],
	decimal: Decimal,
	temperatureIndex: number
): number {
	const snow = columns.find(({ role }) => role === 'snowfall');
	if (!snow) return 0;
	const read = (cells: readonly string[], index: number) =>
		readNumber(cells[index] ?? '', decimal).value ?? 0;
	const snowy = rows.filter(({ cells }) => read(cells, snow.index) > 0);
	const warm = snowy.filter(({ cells }) => read(cells, temperatureIndex) > 8).length;
	return warm * 4 >= snowy.length ? warm : 0;
}

function numbersIn(
	rows: readonly CsvRecord[],
	{ index, header }: ValueColumn,
	decimal: Decimal
): Seen[] {
	return rows.flatMap(({ cells, line }) => {
		const text = cells[index] ?? '';
		const value = isMissingCode(text, false) ? null : readNumber(text, decimal).value;
		return value === null ? [] : [{ value, header, line }];
	});
}
