import type { LakeView } from '#lib/server/services/lake-view.ts';
import { thickness } from '#lib/ui/format/length.ts';
import { isAllWithheld } from '#lib/ui/status-words.ts';
import type { Units } from '#lib/ui/units-setting.ts';

/** As many as the sheet has room for. */
const NAMED = 5;

export interface OtherSite {
	name: string;
	view: LakeView;
}

/** What stands on the parts of a lake that a sheet is not of; `null` where there is none. */
export function besideWords(sites: readonly OtherSite[], units: Units): string | null {
	if (sites.length === 0) return null;
	const named = sites.slice(0, NAMED).map(({ name, view }) => `${name}, ${iceOf(view, units)}`);
	const more = sites.length > NAMED ? [`${sites.length - NAMED} more`] : [];
	return `On the other sites: ${[...named, ...more].join('; ')}.`;
}

function iceOf({ outlook, record, today, asOf }: LakeView, units: Units): string {
	if (record.iceOutOn !== null && record.iceOutOn <= today) return 'open water';
	const { days = [], loads = [] } = outlook?.forecast ?? {};
	const day = days.find(({ on }) => on === asOf);
	if (!day || day.total_m.p50 === null) return 'not known';
	if (isAllWithheld(loads)) return 'stay off';
	const bound_m = day.bound?.total_m ?? null;
	return bound_m === null ? 'not known' : `one hole in ten under ${thickness(bound_m, units)}`;
}
