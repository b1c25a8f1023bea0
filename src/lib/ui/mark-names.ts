import type { ChartUse } from '#lib/model/load-case.ts';

/** What each row of the charts is called where there is room for a word only. */
export const MARK_NAMES: Record<ChartUse, string> = {
	onFoot: 'on foot',
	group: 'group',
	snowmobile: 'snowmobile',
	atv: 'ATV',
	car: 'car',
	lightTruck: 'pickup',
	heavyTruck: 'heavy truck',
	truckWithShelter: 'truck with shelter'
};
