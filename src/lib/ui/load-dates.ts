import { addDays, daysBetween } from '#lib/model/calendar.ts';
import type { StripData, StripLoad } from './charts/strip-data.ts';
import { runs } from './charts/strip-runs.ts';
import { shortDay } from './format/day.ts';
import { requirement } from './format/length.ts';
import type { Units } from './units-setting.ts';

type Span = Pick<StripData, 'from' | 'to' | 'asOf' | 'snowKnown'>;

const THAW_percent = 50;
/** A chance of less is not worth a sentence. */
const HARDLY_percent = 5;

/**
 * When a load's chart minimum is expected to be met, with the doubt in words; follows its name and a
 * colon. Dates are of the ice alone, a warm spell doesn't take them away. Never a permission.
 */
export function loadDates(load: StripLoad, span: Span, units: Units): string {
	if (load.required_m === null) {
		return 'the charts end here, only an ice engineer can say.';
	}
	const asked = `asks ${requirement(load.required_m, units)}${forToday(load)}.`;
	if (load.met_percent.every((met) => met === null)) return `${asked} No dates are estimated.`;
	return [asked, dates(load, span), chanceToday(load, span)]
		.filter((part) => part !== null)
		.join(' ');
}

/** The warm spells from the day asked for on: they close what the ice would carry, dates or not. */
export function warmSpells({ from, to, asOf, isOpen, loads }: StripData): string | null {
	if (isOpen) return null;
	const first = indexOf({ from, asOf });
	const days = loads[0]?.thaw_percent.map((_, index) => isWarm(loads, index)) ?? [];
	const spells = runs(days.slice(first))
		.filter(({ value }) => value)
		.map((run) => {
			const begins = addDays(from, first + run.from);
			return { begins, ends: addDays(begins, run.length - 1) };
		});
	const parts = spells.map(({ begins, ends }) => {
		if (ends >= to) return `from ${shortDay(begins)} on`;
		return begins === ends
			? `on ${shortDay(begins)}`
			: `from ${shortDay(begins)} to ${shortDay(ends)}`;
	});
	return parts.length === 0
		? null
		: `More likely than not, a warm spell closes the ice to every load ${listed(parts)}, whatever it measures.`;
}

function isWarm(loads: readonly StripLoad[], index: number): boolean {
	return loads.some(({ thaw_percent }) => (thaw_percent[index] ?? 0) >= THAW_percent);
}

function listed(parts: readonly string[]): string {
	return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** @example inTen(72) // => '7 in 10' */
export function inTen(percent: number): string {
	if (percent < 10) return 'under 1 in 10';
	return percent >= 95 ? 'over 9 in 10' : `${Math.floor(percent / 10)} in 10`;
}

function forToday({ dayRule }: StripLoad): string {
	if (dayRule === null) return '';
	const why = dayRule === 'warmSpell' ? 'in the warm spell' : 'after the fall in temperature';
	return ` now, ${why}; the dates are for what it asks otherwise`;
}

function dates(load: StripLoad, span: Span): string {
	const { expectedFrom, likelyFrom, until } = load;
	if (!span.snowKnown) return 'No dates are named while the snow on the ice is not known.';
	if (expectedFrom === null) return notExpected(load, span);
	if (until !== null && until < span.asOf) {
		return `Was expected from ${shortDay(expectedFrom)} to ${shortDay(until)}, and is past.`;
	}
	const likely =
		likelyFrom === null
			? 'on no day likely (9 in 10)'
			: `likely ${since(likelyFrom, span)} ${shortDay(likelyFrom)}`;
	const end =
		until === null || until >= span.to
			? `and still so on ${shortDay(span.to)}, the last day told`
			: `until ${shortDay(until)}`;
	return `Expected ${since(expectedFrom, span)} ${shortDay(expectedFrom)}, ${likely}, ${end}.`;
}

function since(on: string, { asOf }: Span): 'since' | 'from' {
	return on <= asOf ? 'since' : 'from';
}

function notExpected(load: StripLoad, { from, to, asOf }: Span): string {
	const by = `Not expected by ${shortDay(to)}`;
	const ahead = load.met_percent.map((met, index) => ({ met: met ?? 0, on: addDays(from, index) }));
	const best = ahead
		.filter(({ on }) => on >= asOf)
		.reduce((most, day) => (day.met > most.met ? day : most), { met: 0, on: asOf });
	return best.met < HARDLY_percent
		? `${by}.`
		: `${by}: at best a chance of ${inTen(best.met)}, on ${shortDay(best.on)}.`;
}

/** None where a rule of the day asks for more: it would be the chance of what is asked otherwise. */
function chanceToday(load: StripLoad, span: Span): string | null {
	if (load.dayRule !== null) return null;
	const met = load.met_percent[indexOf(span)] ?? null;
	return met === null || met < HARDLY_percent
		? null
		: `Chance on ${shortDay(span.asOf)}: ${inTen(met)}.`;
}

function indexOf({ from, asOf }: Pick<Span, 'from' | 'asOf'>): number {
	return Math.max(0, daysBetween(from, asOf));
}
