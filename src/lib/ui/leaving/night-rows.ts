import type { Night } from '#lib/model/leaving/nights.ts';
import type { TableRow } from '../components/ScrollTable.svelte';
import { shortDay } from '../format/day.ts';
import { degreeDays, temperature } from '../format/degrees.ts';
import type { Units } from '../units-setting.ts';

/** The answer right beside the day: on a phone the rest is scrolled to. */
export const NIGHT_COLUMNS = ['Day', 'Freezes again', 'Lowest', 'Below freezing', 'Frost', 'Thaw'];

export function nightRows(nights: readonly Night[], units: Units): TableRow[] {
	return nights.map((night) => ({
		id: night.on,
		cells: [
			`${shortDay(night.on)}, ${night.source}`,
			night.refreezes ? 'yes' : 'no',
			temperature(night.min_degC, units),
			`${Math.floor(night.below_h)} h`,
			degreeDays(night.freezing_degCd, units),
			degreeDays(night.thawing_degCd, units)
		]
	}));
}
