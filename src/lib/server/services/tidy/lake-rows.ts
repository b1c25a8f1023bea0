import type { LakeRecord } from '../lakes.ts';
import { MAIN_SITE, type SiteRecord } from '../sites.ts';
import type { Cell } from './write-table.ts';

export const LAKE_HEADER = [
	'dataset',
	'lake',
	'name',
	'lat',
	'lon',
	'area_km2',
	'mean_depth_m',
	'elevation_m',
	'water',
	'source',
	'time_zone',
	'charts',
	'invented',
	'today',
	'site',
	'site_name',
	'site_kind',
	'track_of'
];

/** What the other tables call a site of a lake. */
export function codeOf({ id }: LakeRecord, site: Pick<SiteRecord, 'id'>): string {
	return site.id === MAIN_SITE ? id : `${id}/${site.id}`;
}

/** A row of `lakes.csv`: each site has ice of its own, and so a row of its own. */
export function lakeCells(lake: LakeRecord, site: SiteRecord, source: string): Cell[] {
	return [
		lake.id,
		codeOf(lake, site),
		lake.name,
		lake.latitude,
		lake.longitude,
		lake.area_km2,
		lake.meanDepth_m,
		lake.elevation_m,
		lake.water,
		source,
		lake.timeZone,
		lake.chartSet,
		lake.isInvented ? 'yes' : null,
		lake.today,
		site.id,
		site.name,
		site.kind,
		site.parent
	];
}
