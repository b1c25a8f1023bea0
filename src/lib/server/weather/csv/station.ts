import { headingUnit } from '../cells/header-units.ts';
import type { Layout } from './layout.ts';
import { inQuotes } from '../cells/quote.ts';
import type { RowProblem } from './problem.ts';
import { rowFits } from './records.ts';

/** A column that names the station, with its name on the first row. */
export interface Station {
	index: number;
	name: string;
}

const STATION =
	/^(station|station ?(id|name|number|code)|stid|site|site ?(id|name)|usaf|wban|wmo( id)?|stations id|havaintoasema)$/;

/** Records of several stations in one file must not be mixed into one lake's weather. */
export function findStation({ header, rows }: Layout): Station | RowProblem | null {
	const index = header.findIndex((name) => STATION.test(headingUnit(name).name));
	if (index < 0) return null;
	const [first, ...others] = rows.filter(({ cells }) => rowFits(cells, header.length));
	const name = first?.cells[index] ?? '';
	const second = others.find(({ cells }) => cells[index] !== name);
	if (!second) return { index, name };
	return { line: second.line, reason: otherStation(second.cells[index] ?? '', name) };
}

export function otherStation(found: string, first: string): string {
	return `the station is ${inQuotes(found)} here and ${inQuotes(first)} on the first row; keep the rows of one station only`;
}
