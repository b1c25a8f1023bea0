import { addDays, daysBetween, type IsoDate } from '../calendar.ts';
import { OPEN_WATER } from '../column.ts';
import { holeEffective_m, isDrilled, thicknessHoles } from '../hole.ts';
import type { Reading } from '../reading.ts';
import { isSamePlace } from './place-name.ts';
import { PLAIN_LASTS_d, SEASON_RULES } from './season-rule.ts';
import type { SiteFacts } from './site-facts.ts';
import type { WeakSpot } from './weak-spot.ts';

/**
 * What is known of a place by its own holes.
 *
 * `counts`: holes within their lifetime. `neverDrilled`; `tooOld`: past their lifetime; `thawed`,
 * `weatherUnknown`: something has come since; `broke`: somebody went through, and no hole is later;
 * `never`: a ridge or a break-through, where no hole supports anything; `toldOnly`: nobody here saw it.
 */
export type CheckState =
	| 'counts'
	| 'neverDrilled'
	| 'tooOld'
	| 'thawed'
	| 'weatherUnknown'
	| 'broke'
	| 'never'
	| 'toldOnly';

export interface PlaceCheck {
	state: CheckState;
	/** The last day that somebody looked or drilled; `null`: never this winter. */
	lastOn: IsoDate | null;
	/** The day of the holes that `effective_m` rests on. */
	drilledOn: IsoDate | null;
	/** Last day that they count on. */
	until: IsoDate | null;
	/** Thinnest hole of those that count, or of the last ones that did: what speaks against a load. */
	effective_m: number | null;
	/** Holes that count for a status. */
	holes: number;
	/** Some hole's clear and white ice were not told apart, and it counts half. */
	isHalved: boolean;
}

/**
 * What a place's own holes tell on a day. Thinner ones within their lifetime count whoever drilled them.
 *
 * They are never carried up with the site, which grows where this place may not; what the site has lost
 * since is taken off. Where the layers were not told apart all counts as white. A thaw since, or a day
 * without a temperature, ends them. Our rules, cautious.
 */
export function placeCheck(
	{ name, spot }: { name: string; spot: WeakSpot | null },
	readings: readonly Reading[],
	facts: SiteFacts
): PlaceCheck {
	const own = readings.filter(
		(reading) => reading.on <= facts.today && isSamePlace(reading.place, name)
	);
	const drilled = own.filter(isDrilled).toSorted((a, b) => b.on.localeCompare(a.on));
	const lastDrilledOn = drilled[0]?.on ?? null;
	const brokeOn = latest(own.filter(({ kind }) => kind === 'wentThrough').map(({ on }) => on));
	const looked = spot?.checkedOn && spot.checkedOn <= facts.today ? spot.checkedOn : null;
	const lastOn = latest([looked, lastDrilledOn, brokeOn].filter((on) => on !== null));
	const lasts_d = spot === null ? PLAIN_LASTS_d : SEASON_RULES[spot.kind].lasts_d;
	const seen = drilled.filter(({ secondHand }) => !secondHand);
	const base = { lastOn, ...thinnest(recent(drilled, lasts_d ?? 0, facts), facts) };
	const nothing = { ...base, until: null, holes: 0 };
	if (brokeOn !== null && (lastDrilledOn === null || lastDrilledOn <= brokeOn))
		return { ...nothing, state: 'broke' };
	if (lasts_d === null) return { ...nothing, state: 'never' };
	if (lastDrilledOn === null) return { ...nothing, state: 'neverDrilled' };
	const seenOn = seen[0]?.on;
	if (seenOn === undefined) return { ...nothing, state: 'toldOnly' };
	const state = ending(seenOn, lasts_d, facts);
	if (state !== 'counts') return { ...nothing, state };
	const counted = recent(seen, lasts_d, facts).filter(
		({ on }) => ending(on, lasts_d, facts) === 'counts'
	);
	const holes = counted.flatMap(thicknessHoles).length;
	return { ...base, state, until: addDays(seenOn, lasts_d), holes };
}

function ending(on: IsoDate, lasts_d: number, facts: SiteFacts): CheckState {
	if (daysBetween(on, facts.today) > lasts_d) return 'tooOld';
	if (on < facts.today && facts.gapDaysSince(on) > 0) return 'weatherUnknown';
	return on < facts.today && facts.hasThawedSince(on) ? 'thawed' : 'counts';
}

/** Those within their lifetime, or else those of the last day. */
function recent(drilled: readonly Reading[], lasts_d: number, { today }: SiteFacts): Reading[] {
	const within = drilled.filter(({ on }) => daysBetween(on, today) <= lasts_d);
	return within.length > 0 ? within : drilled.filter(({ on }) => on === drilled[0]?.on);
}

function thinnest(
	readings: readonly Reading[],
	facts: SiteFacts
): Pick<PlaceCheck, 'drilledOn' | 'effective_m' | 'isHalved'> {
	const holes = readings.flatMap((reading) =>
		thicknessHoles(reading).flatMap((hole) => {
			const whole_m = holeEffective_m(hole, OPEN_WATER);
			if (whole_m === null) return [];
			const now_m = Math.max(0, whole_m - facts.lostSince_m(reading.on));
			const isHalved = hole.clear_m === null && hole.white_m === null;
			return { on: reading.on, now_m, isHalved };
		})
	);
	const least = holes.reduce<(typeof holes)[number] | null>(
		(thin, hole) => (thin === null || hole.now_m < thin.now_m ? hole : thin),
		null
	);
	return {
		drilledOn: least?.on ?? null,
		effective_m: least?.now_m ?? null,
		isHalved: least?.isHalved ?? false
	};
}

function latest(days: readonly IsoDate[]): IsoDate | null {
	return days.toSorted().at(-1) ?? null;
}
