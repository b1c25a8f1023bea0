import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import { alike } from '../alike.ts';
import { shortDay, span } from '../format/day.ts';
import { requirement, thickness, thicknessNumber } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import type { IfAnswer, IfLoad } from './answer.ts';

/** One thing as it is and as it would be. */
export interface Comparison {
	id: string;
	name: string;
	asIs: string;
	/** `null` before there is an answer. */
	other: string | null;
	/** How far apart the two are, in words. */
	shift: string | null;
}

/** The unchanged estimate beside the changed one: the ice first, then each load's dates. */
export function compare(asIs: IfAnswer, other: IfAnswer | null, units: Units): Comparison[] {
	const ahead = asIs.ahead ?? other?.ahead;
	const rows = [
		...(ahead
			? [row('ahead', `Ice on ${shortDay(ahead.on)}`, asIs, other, (it) => aheadText(it, units))]
			: []),
		row('peak', 'Thickest', asIs, other, (it) => peakText(it, units))
	];
	const extra = other?.loads.filter(({ id }) => !asIs.loads.some((load) => load.id === id)) ?? [];
	const loads = [...asIs.loads, ...extra].map((load) => loadRow(load, asIs, other, units));
	return [...rows, ...merged(loads)];
}

function row(
	id: string,
	name: string,
	asIs: IfAnswer,
	other: IfAnswer | null,
	text: (answer: IfAnswer) => string
): Comparison {
	return { id, name, asIs: text(asIs), other: other && text(other), shift: null };
}

function aheadText({ ahead }: IfAnswer, units: Units): string {
	if (!ahead) return 'not estimated';
	const { p05_m, p50_m, p95_m } = ahead;
	const [low, high] = [p05_m, p95_m].map((metres) => thicknessNumber(metres, units));
	return `${thickness(p50_m, units)}, nine holes in ten ${low} to ${high}`;
}

function peakText({ peak }: IfAnswer, units: Units): string {
	return peak ? `${thickness(peak.p50_m, units)} on ${shortDay(peak.on)}` : 'not estimated';
}

interface LoadRow extends Comparison {
	asks: string;
}

function loadRow(
	{ id, name, required_m }: IfLoad,
	asIs: IfAnswer,
	other: IfAnswer | null,
	units: Units
): LoadRow {
	const [before, after] = [asIs, other].map((answer) =>
		answer?.loads.find((load) => load.id === id)
	);
	const asks = required_m === null ? 'ask an engineer' : `asks ${requirement(required_m, units)}`;
	return {
		id: `load ${id}`,
		name,
		asks,
		asIs: before ? datesText(before, asIs) : 'not among your loads',
		other: other && (after ? datesText(after, other) : 'not estimated'),
		shift: before && after ? shiftText(before, after) : null
	};
}

/** Loads that ask the same and fare the same share a row. */
function merged(rows: readonly LoadRow[]): Comparison[] {
	const fate = ({ asks, asIs, other, shift }: LoadRow) => [asks, asIs, other, shift].join('|');
	return alike(rows, fate).flatMap((group) => {
		const [first] = group;
		if (!first) return [];
		const { asks, ...row } = first;
		return [{ ...row, name: `${group.map(({ name }) => name).join('; ')}, ${asks}` }];
	});
}

function datesText(
	{ required_m, expectedFrom, likelyFrom, until }: IfLoad,
	{ snowKnown }: IfAnswer
): string {
	if (required_m === null) return 'only an ice engineer can say';
	if (!snowKnown) return 'no dates while the snow is not known';
	if (expectedFrom === null) return 'not expected';
	const likely = likelyFrom === null ? 'on no day likely' : `likely ${shortDay(likelyFrom)}`;
	return `expected ${shortDay(expectedFrom)}, ${likely}${until === null ? '' : `, until ${shortDay(until)}`}`;
}

function shiftText(before: IfLoad, after: IfLoad): string | null {
	const shifts = [
		shift('likely', before.likelyFrom, after.likelyFrom) ??
			shift('expected', before.expectedFrom, after.expectedFrom),
		shift('ends', before.until, after.until)
	].filter((text) => text !== null);
	return shifts.length === 0 ? null : shifts.join(', ');
}

function shift(what: string, before: IsoDate | null, after: IsoDate | null): string | null {
	if (before === null || after === null || before === after) return null;
	const days = daysBetween(before, after);
	return `${what} ${span(Math.abs(days))} ${days < 0 ? 'sooner' : 'later'}`;
}
