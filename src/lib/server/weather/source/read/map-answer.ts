import { setImmediate as nextTurn } from 'node:timers/promises';
import { voteDecimal, type Decimal } from '../../cells/numbers.ts';
import type { Mapping } from '../schema.ts';
import { clockOf } from './clock-of.ts';
import { columnsOf, type Answer, type Column } from './columns.ts';
import { stationOf } from './facts.ts';
import { issuedAtOf } from './issued-at.ts';
import { mapDays } from './map-days.ts';
import { mapHours } from './map-hours.ts';
import type { Mapped, Place } from './mapped.ts';
import { Tally } from './tally.ts';

/** More times than a winter of five-minute values are left unread: they would hold up everybody else. */
const MOST_TIMES = 60_000;

/** Reads an answer by its mapping. Nothing in it throws, nothing outside of physical bounds comes out. */
export async function mapAnswer(mapping: Mapping, answer: Answer, place: Place): Promise<Mapped> {
	const mapped: Mapped = {
		hours: [],
		days: [],
		dayEnds_s: new Map(),
		station: stationOf(mapping, answer),
		issuedAt: null,
		tally: new Tally(),
		samples: new Map()
	};
	const clock = clockOf(mapping.time.zone, place.timeZone, answer);
	if (typeof clock === 'string') {
		mapped.tally.addProblem(clock);
		return mapped;
	}
	const issued = issuedAtOf(mapping, answer, clock);
	mapped.issuedAt = issued.at;
	if (issued.problem !== null) mapped.tally.addProblem(issued.problem);
	const { columns, problems } = await columnsOf(mapping, answer);
	for (const problem of problems) mapped.tally.addProblem(problem);
	const usable = columns.filter((column) => isReadable(column, mapped.tally));
	const reading = { mapping, place, clock, decimal: decimalOf(usable, answer) };
	await nextTurn();
	if (mapping.step === 'hourly') await mapHours(reading, usable, mapped);
	else await mapDays(reading, usable, mapped);
	return mapped;
}

function isReadable({ axis }: Column, tally: Tally): boolean {
	if (axis.raw.length <= MOST_TIMES) return true;
	const count = axis.raw.length.toLocaleString('en');
	tally.addProblem(
		`There are ${count} times at ${axis.path}, more than can be read at once; ask for fewer days in one call.`
	);
	return false;
}

/** CSV may have decimal commas; JSON has none. */
function decimalOf(columns: readonly Column[], { table }: Answer): Decimal {
	if (!table) return '.';
	return voteDecimal(columns.flatMap(({ raw }) => raw.slice(0, 500).map(String))).decimal;
}
