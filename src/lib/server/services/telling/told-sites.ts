import { z } from 'zod';
import type { Told } from '#lib/model/telling/told.ts';
import type { TellingRow } from '../../storage/telling.ts';
import { MAIN_SITE } from '../sites.ts';

/** The ids of the sites that are told of, of those that are there; the main one where none is left. */
export function chosenSites(
	row: Pick<TellingRow, 'sites'> | undefined,
	there: readonly { id: string }[]
): string[] {
	const wanted = !row || row.sites === null ? [MAIN_SITE] : parseSites(row.sites);
	const chosen = there.map(({ id }) => id).filter((id) => wanted.includes(id));
	return chosen.length > 0 ? chosen : [MAIN_SITE];
}

function parseSites(json: string): string[] {
	return z.array(z.string()).parse(JSON.parse(json));
}

/** What counts as told, by site. */
export type ToldBySite = Readonly<Record<string, Told | undefined>>;

/** Written by `tell.ts` only; of an unknown version, nothing counts as told. */
export function toldBySite({ state }: Pick<TellingRow, 'state'>): ToldBySite {
	if (state === null) return {};
	const told = JSON.parse(state) as Told | { version: 2; sites: ToldBySite };
	if (told.version === 2) return told.sites;
	// As it was stored when only the main site was told of.
	return told.version === 1 ? { [MAIN_SITE]: told } : {};
}

export function storedTold(sites: ToldBySite): string {
	return JSON.stringify({ version: 2, sites });
}

/** A calendar's day of a site: the main one's keep the keys that they always had. */
export function dateKey(site: string, key: string): string {
	return site === MAIN_SITE ? key : `${site}:${key}`;
}
