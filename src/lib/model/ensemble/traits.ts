import type { Parameters } from '../parameters.ts';
import type { SiteMemory } from './memory.ts';
import { normalDraws } from './random.ts';
import { UNCERTAIN, type UncertainName } from './uncertain.ts';

/** What makes members differ, as standard normal numbers, one array an uncertain parameter. */
export interface Traits {
	/** Of the site: the same every winter. */
	readonly site: Float64Array[];
	/** Of this winter only. */
	readonly winter: Float64Array[];
}

/** The uncertain parameters of every member; the others are shared. */
export type MemberParameters = Readonly<Record<UncertainName, Float64Array>>;

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
		const values = new Float64Array(ofSite.length);
		for (let i = 0; i < values.length; i++) {
			const shift = site * (ofSite[i] ?? 0) + winter * (ofWinter[i] ?? 0);
			values[i] = scale === 'log' ? centre * Math.exp(shift) : shiftedShare(centre, shift);
		}
		return [name, values] as const;
	});
	return Object.fromEntries(bent) as MemberParameters;
}

function shiftedShare(centre: number, shift: number): number {
	const odds = (centre / (1 - centre)) * Math.exp(shift);
	return odds / (1 + odds);
}

/** Sets the uncertain parameters of one member in a record that holds the shared ones already. */
export function takeParameters(
	of: MemberParameters,
	i: number,
	into: { -readonly [name in keyof Parameters]: number }
): void {
	// By name and not in a loop over names: this runs for every member and day.
	into.exchange_W_m2K = of.exchange_W_m2K[i] ?? 0;
	into.snowKeptFraction = of.snowKeptFraction[i] ?? 0;
	into.snowConductivityRatio = of.snowConductivityRatio[i] ?? 0;
	into.settledSnow_kg_m3 = of.settledSnow_kg_m3[i] ?? 0;
	into.waterHeat_W_m2 = of.waterHeat_W_m2[i] ?? 0;
	into.soakedFraction = of.soakedFraction[i] ?? 0;
	into.snowSpreadFraction = of.snowSpreadFraction[i] ?? 0;
	into.snowMelt_kg_m2degCd = of.snowMelt_kg_m2degCd[i] ?? 0;
	into.iceMelt_m_degCd = of.iceMelt_m_degCd[i] ?? 0;
	into.cloudFraction = of.cloudFraction[i] ?? 0;
}
