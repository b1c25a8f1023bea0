import { total_m } from './column.ts';
import { isDrilled } from './hole.ts';
import type { Reading } from './reading.ts';
import type { SeasonDay } from './season.ts';
import { ROTTING_SUN_W_m2 } from './warm-spell.ts';

/** What a day without a temperature may have grown, or once it melts, taken. Our choice. */
const GAP_GROWTH_m = 0.01;
const GAP_MELT_m = 0.03; // 5 °C·d at 0.6 cm [M-med], or 100 W/m² of sun [C]

/** What has happened to the ice since a hole last set its thickness, or since freeze-up. */
export interface SinceAnchor {
	/** Thickness the hole left, and the days since; `null` when there was none. */
	anchored_m: number | null;
	read_d: number | null;
	/** The hole told clear and white ice apart. */
	layersRead: boolean;
	grown_m: number;
	melted_m: number;
	/** Days without a temperature, and what they may have changed. */
	gapDays: number;
	gaps_m: number;
}

/** Nothing has been read yet. */
export const AT_FREEZE_UP: SinceAnchor = {
	anchored_m: null,
	read_d: null,
	layersRead: false,
	grown_m: 0,
	melted_m: 0,
	gapDays: 0,
	gaps_m: 0
};

/** The account for each day of a season, in its order. A reading of snow alone does not anchor. */
export function sinceAnchor(
	days: readonly SeasonDay[],
	readings: readonly Reading[]
): SinceAnchor[] {
	const drilled = new Map(readings.filter(isDrilled).map((reading) => [reading.id, reading]));
	let account = AT_FREEZE_UP;
	let before: SeasonDay | undefined;
	return days.map((day) => {
		const anchors = day.anchoredBy.flatMap((id) => drilled.get(id) ?? []);
		account = anchors.length > 0 ? anchored(day, anchors) : carried(account, before, day);
		before = day;
		return account;
	});
}

function anchored(day: SeasonDay, readings: readonly Reading[]): SinceAnchor {
	const layersRead = readings.some((reading) =>
		reading.holes.some((hole) => hole.clear_m !== null || hole.white_m !== null)
	);
	return { ...AT_FREEZE_UP, anchored_m: total_m(day.column), read_d: 0, layersRead };
}

function carried(account: SinceAnchor, before: SeasonDay | undefined, day: SeasonDay): SinceAnchor {
	const change_m = total_m(day.column) - (before ? total_m(before.column) : 0);
	const gap = before?.source === 'gap' ? before : undefined;
	return {
		anchored_m: account.anchored_m,
		layersRead: account.layersRead,
		read_d: account.read_d === null ? null : account.read_d + 1,
		grown_m: account.grown_m + Math.max(0, change_m),
		melted_m: account.melted_m + Math.max(0, -change_m),
		gapDays: account.gapDays + (gap ? 1 : 0),
		gaps_m: account.gaps_m + (gap ? gap_m(gap, day, change_m) : 0)
	};
}

function gap_m(gap: SeasonDay, day: SeasonDay, change_m: number): number {
	const mayMelt = gap.sun_W_m2 > ROTTING_SUN_W_m2 || day.thawing_degCd > 0 || change_m < 0;
	return mayMelt ? GAP_MELT_m : GAP_GROWTH_m;
}
