import type { Position } from '../distance.ts';

const METRES_PER_DEGREE = (6_371_000 * Math.PI) / 180; // of the mean radius [M-hi]

/** A place on a flat plan. */
export interface LocalPoint {
	east_m: number;
	north_m: number;
}

/**
 * Metres east and north of an origin on a flat plan: degrees of longitude shrink with the cosine of the
 * origin's latitude. Right to half a percent within some tens of kilometres; over the date line too.
 */
export function toLocal(origin: Position, { latitude, longitude }: Position): LocalPoint {
	return {
		east_m: turned(longitude - origin.longitude) * METRES_PER_DEGREE * shrink(origin),
		north_m: (latitude - origin.latitude) * METRES_PER_DEGREE
	};
}

/** Inverse of {@link toLocal}. */
export function fromLocal(origin: Position, { east_m, north_m }: LocalPoint): Position {
	const longitude = origin.longitude + east_m / (METRES_PER_DEGREE * shrink(origin));
	return { latitude: origin.latitude + north_m / METRES_PER_DEGREE, longitude: turned(longitude) };
}

/** Part of the way from one position to another, 0 to 1, straight on the plan. */
export function between(from: Position, to: Position, part: number): Position {
	const { east_m, north_m } = toLocal(from, to);
	return fromLocal(from, { east_m: east_m * part, north_m: north_m * part });
}

/** Into -180 to 180. */
function turned(longitude: number): number {
	return ((((longitude + 180) % 360) + 360) % 360) - 180;
}

/** At the poles themselves there is no east. */
function shrink({ latitude }: Position): number {
	return Math.max(1e-6, Math.cos((latitude * Math.PI) / 180));
}
