const EARTH_RADIUS_m = 6_371_000; // mean radius [M-hi]

export interface Position {
	latitude: number;
	longitude: number;
}

/**
 * Distance over a round earth, in metres.
 *
 *   d = 2 R asin √(sin²(Δφ/2) + cos φ₁ cos φ₂ sin²(Δλ/2))
 *
 * The haversine formula: right to half a percent, as the earth is not round.
 *
 * @example distance_m({ latitude: 0, longitude: 0 }, { latitude: 0, longitude: 90 }) // => 10_007_543
 */
export function distance_m(a: Position, b: Position): number {
	const [phiA, phiB] = [radians(a.latitude), radians(b.latitude)];
	const ofLatitude = Math.sin((phiB - phiA) / 2) ** 2;
	const ofLongitude = Math.sin(radians(b.longitude - a.longitude) / 2) ** 2;
	const h = ofLatitude + Math.cos(phiA) * Math.cos(phiB) * ofLongitude;
	return 2 * EARTH_RADIUS_m * Math.asin(Math.min(1, Math.sqrt(h)));
}

function radians(degrees: number): number {
	return (degrees * Math.PI) / 180;
}
