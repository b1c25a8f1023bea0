import type { IsoDate } from '#lib/model/calendar.ts';
import type { LastDay } from '#lib/model/leaving/last-days.ts';
import type { OffReason } from '#lib/model/leaving/off-by.ts';
import { nameAmid } from '#lib/model/load-name.ts';
import { alike } from '../alike.ts';
import { shortDay } from '../format/day.ts';
import { counted } from '../format/number.ts';
import { requirement } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import { inDays } from './in-days.ts';
import type { ComingOffData, LeavingLoad } from './told.ts';

const REASONS: Record<OffReason, string> = {
	removalDate: 'the local removal date',
	thickness: 'by the thickness',
	snow: 'snow may sink it after that',
	warmSpell: 'before a warm spell that stays'
};

const PASSED: Record<OffReason, string> = {
	removalDate: 'the local removal date has come',
	thickness: 'the thickness is there today in nine cases of ten, and no longer',
	snow: 'the snow on the ice may sink it',
	warmSpell: 'a warm spell that stays is about to begin, or in force'
};

const RARELY = 'Off now, if it is on: in nine cases of ten it is met on none of the days told';

interface FirstOff {
	/** As they are called amid a sentence. */
	names: string[];
	on: IsoDate;
	reason: OffReason;
	/** None goes later. */
	isAll: boolean;
}

/** The loads that the ice sends off first, by the ice alone; `null` where it sends none. */
export function firstOff({ leaving }: ComingOffData): FirstOff | null {
	const going = (leaving?.loads ?? []).filter(isOnNow);
	const [first] = going.toSorted((a, b) => ((a.byIce.on ?? '') < (b.byIce.on ?? '') ? -1 : 1));
	if (!first || first.byIce.on === null || first.byIce.reason === null) return null;
	const { on, reason } = first.byIce;
	const names = going.filter(({ byIce }) => byIce.on === on).map(nameAmid);
	return { names, on, reason, isAll: names.length === going.length };
}

/** Loads that may be on, now or later: those that the ice is not expected to carry yet, nor likely ever, are not. */
function isOnNow({ warmEnd, median, byIce, required_m, wasExpected }: LeavingLoad): boolean {
	if (required_m === null || byIce.on === null) return false;
	return warmEnd.kind !== 'never' || (median.kind !== 'never' && wasExpected);
}

/** Loads that share their days, in a row of their own. */
export interface OffRow {
	id: string;
	names: string;
	asks: string;
	/** The day to have them off, or why none is named. */
	off: string;
	begin: string | null;
	/** As likely as not, and at the warm end. */
	days: string;
}

export function offRows({ leaving, now }: ComingOffData, units: Units): OffRow[] {
	const rows = (leaving?.loads ?? []).map((load) => offRow(load, now, units));
	return alike(rows, ({ asks, off, begin, days }) => [asks, off, begin, days].join('|')).flatMap(
		(group) => {
			const [first] = group;
			return first ? [{ ...first, names: group.map(({ names }) => names).join(', ') }] : [];
		}
	);
}

function offRow(load: LeavingLoad, now: IsoDate, units: Units): OffRow {
	const { id, name, required_m } = load;
	const doubled = load.isDoubled ? ' now' : '';
	const asks =
		required_m === null ? 'for an engineer' : `asks ${requirement(required_m, units)}${doubled}`;
	return {
		id,
		names: name,
		asks,
		off: offText(load, now),
		begin: beginText(load, now),
		days: daysText(load)
	};
}

function offText({ offBy, median, warmEnd, wasExpected, required_m }: LeavingLoad, now: IsoDate) {
	const { on, reason } = offBy;
	const isMet = median.kind !== 'never' || warmEnd.kind !== 'never';
	if (!isMet && required_m !== null && reason !== 'removalDate')
		return wasExpected ? 'Off now: no longer expected to be met' : 'Not on: not expected to be met';
	if (on === null || reason === null)
		return required_m === null ? 'By an engineer and the local rules' : 'No day in the days told';
	if (on > now) return `Off by ${shortDay(on)}, ${inDays(now, on)}: ${REASONS[reason]}`;
	if (reason === 'thickness' && warmEnd.kind === 'never') return RARELY;
	return `Off now: ${PASSED[reason]}`;
}

function beginText(load: LeavingLoad, now: IsoDate): string | null {
	const { beginOn, lead_d, reason } = load.offBy;
	if (beginOn === null || lead_d === 0) return null;
	if (reason !== 'removalDate' && isNeverOn(load)) return null;
	const lead = `${counted(lead_d, 'day')} to free it${load.isLeadTyped ? '' : ', our choice'}`;
	return beginOn <= now
		? `Begin now: ${lead}`
		: `Begin by ${shortDay(beginOn)}, ${inDays(now, beginOn)}: ${lead}`;
}

function isNeverOn({ required_m, median, wasExpected }: LeavingLoad): boolean {
	return required_m !== null && median.kind === 'never' && !wasExpected;
}

function daysText({ median, warmEnd, required_m, isEndedBySnow }: LeavingLoad): string {
	if (required_m === null) return 'No thickness is stated, so the ice names no day.';
	if (median.kind === 'unknown') return 'No day is named while the snow on the ice is not known.';
	if (median.kind === 'never') return 'Thick enough on none of the days told.';
	const met = isEndedBySnow ? 'Above the water' : 'Thick enough';
	return `${met} ${warmText(warmEnd)} in nine cases of ten, ${lastText(median)} as likely as not.`;
}

function lastText(last: LastDay): string {
	if (last.kind === 'until') return `to ${shortDay(last.on)}`;
	return last.kind === 'beyond' ? `to ${shortDay(last.on)} and longer` : 'on no day';
}

function warmText(last: LastDay): string {
	return last.kind === 'never' ? 'on no day' : lastText(last);
}
