import type { Parameters } from '../parameters.ts';
import type { SiteMemory } from './memory.ts';
import { normalDraws } from './random.ts';
import { UNCERTAIN } from './uncertain.ts';

/** What makes members differ, as standard normal numbers, one array an uncertain parameter. */
export interface Traits {
	/** Of the site: the same every winter. */
	readonly site: Float64Array[];
	/** Of this winter only. */
	readonly winter: Float64Array[];
}

/** Parameters of every member; those that are not uncertain are shared. */
export interface MemberParameters {
	readonly base: Parameters;
	/** In the order of {@link UNCERTAIN}. */
	readonly bent: readonly Float64Array[];
}

/** Traits of so many members: from the prior, or from what past winters taught the site. */
export function drawTraits(
	count: number,
	random: () => number,
	memory: SiteMemory | null = null
): Traits {
	const fresh = () => UNCERTAIN.map(() => normalDraws(count, random));
	const site = fresh();
	return { site: memory === null ? site : remembered(site, memory), winter: fresh() };
}

/** z = m + C n, with C the triangular root of what the memory says of the spread. */
function remembered(normals: Float64Array[], memory: SiteMemory): Float64Array[] {
	return memory.mean.map((mean, row) => {
		const root = memory.root[row] ?? [];
		return Float64Array.from(normals[row] ?? [], (_, i) =>
			root.reduce((sum, weight, column) => sum + weight * (normals[column]?.[i] ?? 0), mean)
		);
	});
}

/** The parameters that traits bend a lake's own to. */
export function bendParameters(base: Parameters, traits: Traits): MemberParameters {
	const bent = UNCERTAIN.map(({ name, scale, site, winter }, k) => {
		const centre = base[name];
		const ofSite = traits.site[k] ?? new Float64Array();
		const ofWinter = traits.winter[k] ?? new Float64Array();
		return Float64Array.from(ofSite, (z, i) => {
			const shift = site * z + winter * (ofWinter[i] ?? 0);
			return scale === 'log' ? centre * Math.exp(shift) : shiftedShare(centre, shift);
		});
	});
	return { base, bent };
}

function shiftedShare(centre: number, shift: number): number {
	const odds = (centre / (1 - centre)) * Math.exp(shift);
	return odds / (1 + odds);
}

/** Sets the uncertain parameters of one member in a record that holds the shared ones already. */
export function takeParameters(
	{ bent }: MemberParameters,
	i: number,
	into: { -readonly [name in keyof Parameters]: number }
): void {
	// By name and not in a loop over names: this runs for every member and day.
	into.exchange_W_m2K = bent[0]?.[i] ?? 0;
	into.snowKeptFraction = bent[1]?.[i] ?? 0;
	into.snowConductivityRatio = bent[2]?.[i] ?? 0;
	into.settledSnow_kg_m3 = bent[3]?.[i] ?? 0;
	into.waterHeat_W_m2 = bent[4]?.[i] ?? 0;
	into.soakedFraction = bent[5]?.[i] ?? 0;
	into.snowSpreadFraction = bent[6]?.[i] ?? 0;
	into.snowMelt_kg_m2degCd = bent[7]?.[i] ?? 0;
	into.iceMelt_m_degCd = bent[8]?.[i] ?? 0;
	into.cloudFraction = bent[9]?.[i] ?? 0;
}
