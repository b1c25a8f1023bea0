import type { IsoDate } from './calendar.ts';
import type { Reading } from './reading.ts';
import type { SeasonDay } from './season.ts';
import type { Since } from './since/since.ts';
import type { WarmDay } from './warm-day.ts';

/** Slush, or white ice made of it since, that is more than the wet foot of the snow. Our choice. */
const FLOODED_m = 0.005;

/** What has come over the ice since holes were drilled. */
export interface AfterDrilling {
	hasFlooded: boolean;
	hasThawed: boolean;
	/** A warm spell has come and gone since, whether or not another has come after it. */
	hadSpell: boolean;
}

interface Seen {
	asOf: IsoDate;
	readings: readonly Reading[];
	warm: readonly WarmDay[];
	since: Since | null;
}

/** What the rules on the age of holes look at, by the season as told up to the day of the holes. */
export function afterDrilling(
	on: IsoDate,
	season: readonly SeasonDay[],
	{ asOf, warm, readings, since: later }: Seen
): AfterDrilling {
	const days = season.filter((day) => day.on >= on && day.on <= asOf);
	const calmOn = warm.findLast((day) => day.on <= asOf && day.state === 'none')?.on ?? '';
	return {
		hasFlooded:
			days.some((day) => day.on > on && isFlooded(day, days[0])) ||
			[...readings, ...(later?.readings ?? [])].some((other) => other.on > on && sawWater(other)),
		hasThawed: [...days, ...(later?.days ?? [])].some((day) => (day.aboveFreezing_h ?? 0) > 0),
		hadSpell: warm.some((day) => day.on < calmOn && isSpellAfter(day, on))
	};
}

/** In hard frost slush freezes while it forms, and is seen as white ice only. */
function isFlooded({ column }: SeasonDay, first: SeasonDay | undefined): boolean {
	const white_m = column.white_m - (first?.column.white_m ?? 0);
	return column.slush_m > FLOODED_m || white_m > FLOODED_m;
}

/** Whoever has seen it: slush on the ice, or water standing over its top. */
function sawWater({ holes }: Reading): boolean {
	return holes.some(
		({ slush_m, freeboard_m }) => (slush_m ?? 0) > FLOODED_m || (freeboard_m ?? 0) < 0
	);
}

function isSpellAfter(day: WarmDay, on: IsoDate): boolean {
	return day.on >= on && day.lastWarmOn !== null && day.lastWarmOn >= on;
}
