import type { ChartUse, LoadCase } from '#lib/model/load-case.ts';
import { isOwnLoad, nameAmid } from '#lib/model/load-name.ts';

/** What each row of the charts is called where there is room for a word only. */
const MARK_NAMES: Record<ChartUse, string> = {
	onFoot: 'on foot',
	group: 'group',
	snowmobile: 'snowmobile',
	atv: 'ATV',
	car: 'car',
	lightTruck: 'pickup',
	heavyTruck: 'heavy truck',
	truckWithShelter: 'truck with shelter'
};

/** A load of the charts by its row, one that somebody added by its own name: it may ask for more. */
export function markOf({ id, name, use }: Pick<LoadCase, 'id' | 'name' | 'use'>): string {
	return isOwnLoad(id) || use === null ? nameAmid({ id, name }) : MARK_NAMES[use];
}

/** The same for loads in a list by their status: by name where several of a row fare differently. */
export function calledAmong<
	Load extends { id: string; name: string; mark: string; status: string }
>({ id, name, mark, status }: Load, loads: readonly Load[]): string {
	const isShared = loads.some((other) => other.mark === mark && other.status !== status);
	return isShared ? nameAmid({ id, name }) : mark;
}
