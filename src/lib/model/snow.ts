/** A layer of dry snow. */
export interface Snow {
	snow_m: number;
	snowDensity_kg_m3: number;
}

/**
 * Part of the day's precipitation that falls as snow: all at 0 °C and below, none at 2 °C.
 *
 * Half at 1 °C, the customary threshold. For days that do not report their snowfall [M-hi].
 */
export function snowShare(air_degC: number): number {
	return Math.min(1, Math.max(0, (2 - air_degC) / 2));
}

/**
 * Density of snow as it falls.
 *
 *   ρ = 67.9 + 51.3 exp(T/2.6)
 *
 * For T up to 0 °C, held there above. Source: [HedstromPomeroy1998] [M-hi].
 */
export function freshSnow_kg_m3(air_degC: number): number {
	return 67.92 + 51.25 * Math.exp(Math.min(0, air_degC) / 2.59);
}

/**
 * Conductivity of dry land snow.
 *
 *   k = 0.138 - 1.01 ρ + 3.233 ρ²  from 0.156 g/cm³;  k = 0.023 + 0.234 ρ  below
 *
 * Held at its value for 0.6 g/cm³ above. The published branches differ by 0.0004 where they meet.
 * Source: [Sturm1997] [T].
 */
export function landSnow_W_mK(density_kg_m3: number): number {
	const rho = Math.min(0.6, Math.max(0, density_kg_m3) / 1000);
	return rho < 0.156 ? 0.023 + 0.234 * rho : 0.138 - 1.01 * rho + 3.233 * rho ** 2;
}

/** Less snow than this is none: so little that dividing by it tells nothing. */
const LEAST_kg_m2 = 1e-9;

/** Adds snow that has fallen, by mass. */
export function addSnow(snow: Snow, fall_kg_m2: number, fresh_kg_m3: number): void {
	if (fall_kg_m2 <= LEAST_kg_m2) return;
	const mass_kg_m2 = snowMass_kg_m2(snow) + fall_kg_m2;
	snow.snow_m += fall_kg_m2 / fresh_kg_m3;
	snow.snowDensity_kg_m3 = mass_kg_m2 / snow.snow_m;
}

/**
 * Settles snow; its mass stays.
 *
 *   ρ' = ρ_settled - (ρ_settled - ρ) exp(-Δt/τ)
 *
 * Source: [Verseghy1991], there with 300 kg/m³ and 100 h [M-med]. The part that is left of the
 * difference is that of {@link unsettledFraction}.
 */
export function settle(snow: Snow, settled_kg_m3: number, unsettledFraction: number): void {
	if (snow.snow_m <= 0 || snow.snowDensity_kg_m3 >= settled_kg_m3) return;
	const mass_kg_m2 = snowMass_kg_m2(snow);
	const short_kg_m3 = settled_kg_m3 - snow.snowDensity_kg_m3;
	snow.snowDensity_kg_m3 = settled_kg_m3 - short_kg_m3 * unsettledFraction;
	snow.snow_m = mass_kg_m2 / snow.snowDensity_kg_m3;
}

/** What a time leaves of the difference to settled snow: exp(-Δt/τ). */
export function unsettledFraction(settling_h: number, duration_h: number): number {
	return Math.exp(-duration_h / settling_h);
}

/**
 * Packs a part of the snow to another density, if that is denser: the mean follows, mass stays.
 *
 *   ρ' = ρ + (ρ_packed - ρ) share
 */
export function pack(snow: Snow, part_kg_m2: number, packed_kg_m3: number): void {
	if (part_kg_m2 <= 0 || snow.snow_m <= 0 || snow.snowDensity_kg_m3 >= packed_kg_m3) return;
	const mass_kg_m2 = snowMass_kg_m2(snow);
	const share = Math.min(1, part_kg_m2 / mass_kg_m2);
	snow.snowDensity_kg_m3 += (packed_kg_m3 - snow.snowDensity_kg_m3) * share;
	snow.snow_m = mass_kg_m2 / snow.snowDensity_kg_m3;
}

/** Takes a mass from the snow at its density: by melt, by soaking. */
export function removeSnow(snow: Snow, mass_kg_m2: number): void {
	const left_kg_m2 = snowMass_kg_m2(snow) - mass_kg_m2;
	snow.snow_m = left_kg_m2 > LEAST_kg_m2 ? left_kg_m2 / snow.snowDensity_kg_m3 : 0;
}

/** Water equivalent of the layer. */
export function snowMass_kg_m2(snow: Snow): number {
	return snow.snow_m * snow.snowDensity_kg_m3;
}
