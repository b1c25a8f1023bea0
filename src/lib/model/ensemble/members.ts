import type { SiteIce } from '../site-ice.ts';

/** The ice of every member, a typed array a quantity: the whole ensemble is one picture in memory. */
export interface Members {
	readonly count: number;
	readonly snow_m: Float64Array;
	readonly snowDensity_kg_m3: Float64Array;
	readonly slush_m: Float64Array;
	readonly white_m: Float64Array;
	readonly clear_m: Float64Array;
	readonly liquidFraction: Float64Array;
	readonly crust_m: Float64Array;
	readonly waterHeat_J_m2: Float64Array;
}

/** So many members on open water. */
export function openMembers(count: number): Members {
	const zeros = () => new Float64Array(count);
	return {
		count,
		snow_m: zeros(),
		snowDensity_kg_m3: zeros(),
		slush_m: zeros(),
		white_m: zeros(),
		clear_m: zeros(),
		liquidFraction: zeros(),
		crust_m: zeros(),
		waterHeat_J_m2: zeros()
	};
}

/** Puts one member's ice where the model's processes can work on it. */
export function takeMember(members: Members, i: number, ice: SiteIce): void {
	ice.snow_m = members.snow_m[i] ?? 0;
	ice.snowDensity_kg_m3 = members.snowDensity_kg_m3[i] ?? 0;
	ice.slush_m = members.slush_m[i] ?? 0;
	ice.white_m = members.white_m[i] ?? 0;
	ice.clear_m = members.clear_m[i] ?? 0;
	ice.liquidFraction = members.liquidFraction[i] ?? 0;
	ice.crust_m = members.crust_m[i] ?? 0;
	ice.waterHeat_J_m2 = members.waterHeat_J_m2[i] ?? 0;
}

/** Puts it back. */
export function putMember(members: Members, i: number, ice: SiteIce): void {
	members.snow_m[i] = ice.snow_m;
	members.snowDensity_kg_m3[i] = ice.snowDensity_kg_m3;
	members.slush_m[i] = ice.slush_m;
	members.white_m[i] = ice.white_m;
	members.clear_m[i] = ice.clear_m;
	members.liquidFraction[i] = ice.liquidFraction;
	members.crust_m[i] = ice.crust_m;
	members.waterHeat_J_m2[i] = ice.waterHeat_J_m2;
}
