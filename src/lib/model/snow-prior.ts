/**
 * Usual precipitation of a winter's day, for days that did not report it.
 *
 *   P = 1.6 kg/m² × min(1, (85 - |φ|)/35) × min(1, exp(T/25))
 *
 * Inland winters: 35 to 50 mm of water a month at 45°, half of it at 70°, less in deep cold, when the
 * air holds less. A stand-in that keeps unknown snow from being no snow; common practice, no source.
 */
export function usualPrecipitation_kg_m2(latitude: number, air_degC: number): number {
	const byLatitude = Math.min(1, Math.max(0.2, (85 - Math.abs(latitude)) / 35));
	const byCold = Math.min(1, Math.exp(air_degC / 25));
	return 1.6 * byLatitude * byCold;
}
