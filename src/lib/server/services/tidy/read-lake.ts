import type { DayValues } from '#lib/model/hours-to-days.ts';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import { newLake, type NewLake } from '../lakes.ts';
import type { NewReading } from '../reading-input.ts';
import { newSite } from '../site-input.ts';
import { whyNotStored } from '../site-rules.ts';
import { MAIN_SITE, type SiteRecord } from '../sites.ts';
import { LAKES_FILE } from './folder.ts';
import type { Ledger } from './ledger.ts';
import type { OwnLakeRow } from './own-rows.ts';
import { readSiteReadings } from './read-readings.ts';
import { readSiteWinters } from './read-site-winters.ts';

export interface TidySite extends SiteRecord {
	winters: SiteWinter[];
	readings: NewReading[];
}

/** A lake as a folder has it. */
export interface TidyLake {
	/** The id that it had where it was exported, or a name for one. */
	wantedId: string;
	lake: NewLake;
	/** `null`: it is a real one. */
	invented: { today: IsoDate | null } | null;
	/** `main` first. */
	sites: TidySite[];
	days: DayValues[];
}

interface LakeLine {
	line: number;
	row: OwnLakeRow;
}

/** One lake of the folder from its rows, one for each of its sites; `null` when it is refused. */
export function readLake(ledger: Ledger, rows: LakeLine[], days: DayValues[]): TidyLake | null {
	const main = rows.find(({ row }) => row.site === null || row.site === MAIN_SITE);
	if (!main) {
		ledger.refuse(LAKES_FILE, rows[0]?.line ?? 0, 'a lake needs a row whose site is "main"');
		return null;
	}
	const { row, line } = main;
	const lake = newLake.safeParse({
		name: row.name ?? row.lake,
		latitude: row.lat,
		longitude: row.lon,
		elevation_m: row.elevation_m,
		area_km2: row.area_km2,
		meanDepth_m: row.mean_depth_m,
		water: row.water,
		timeZone: row.time_zone,
		...(row.charts === null ? {} : { chartSet: row.charts })
	});
	if (!lake.success) {
		const [issue] = lake.error.issues;
		ledger.refuse(LAKES_FILE, line, `${issue?.path.join('.')} ${issue?.message}`);
		return null;
	}
	const sites = readSites(ledger, rows, main);
	return {
		wantedId: row.site === null ? lake.data.name : row.dataset,
		lake: lake.data,
		invented: row.invented === 'yes' ? { today: row.today } : null,
		sites,
		days
	};
}

/** Those that tracks were made on come before them. */
function readSites(ledger: Ledger, rows: LakeLine[], main: LakeLine): TidySite[] {
	const others = rows.filter((each) => each !== main);
	const inOrder = [main, ...others.toSorted((a, b) => rank(a) - rank(b))];
	const sites: TidySite[] = [];
	for (const { line, row } of inOrder) {
		const id = row.site ?? MAIN_SITE;
		const site = newSite.safeParse({
			name: row.site_name ?? 'Main',
			kind: row.site_kind ?? 'basin',
			parent: row.track_of
		});
		const isId = /^[a-z0-9][a-z0-9-]{0,79}$/.test(id) && !sites.some((other) => other.id === id);
		const issues = site.success
			? whyNotStored(sites, site.data).map(({ message }) => message)
			: site.error.issues.map(({ path, message }) => `site ${path.join('.')} ${message}`);
		if (!isId) issues.push(`column site: "${id}" is there twice or is no plain name`);
		for (const reason of issues) ledger.refuse(LAKES_FILE, line, reason);
		if (!site.success || issues.length > 0) continue;
		const winters = readSiteWinters(ledger, row.dataset, row.lake);
		const readings = readSiteReadings(ledger, row.dataset, row.lake, id);
		sites.push({ id, ...site.data, winters, readings });
	}
	return sites;
}

function rank({ row }: LakeLine): number {
	return row.site_kind === 'track' ? 1 : 0;
}
