import { dayOfYear, type IsoDate } from '../calendar.ts';
import type { LakeFacts } from '../lake.ts';

/** Figures for the middle of the two seasons at 50° and sea level, and what a degree north adds. */
const COLDEST_degC = -4.5;
const COLDEST_PER_DEGREE_K = -1.2;
const WARMEST_degC = 21.3;
const WARMEST_PER_DEGREE_K = -0.325;

const LAPSE_K_m = 0.0065; // of the standard atmosphere [M-hi]
const CONTINENTALITY_K = 11; // between an ocean's lee and the heart of a continent
const MILD_LONGITUDE = 19; // and the one opposite

const COLDEST_DAY = 20; // of the year, in the north
const YEAR_d = 365.25;

/**
 * The usual mean temperature of a day where nothing is stored of a lake's past: a yearly cycle by
 * latitude, elevation and longitude.
 *
 *   coldest = -4.5 - 1.2 (|φ| - 50) + 11 cos 2(λ - 19°) - 0.0065 z
 *   warmest = 21.3 - 0.325 (|φ| - 50) - 0.0065 z
 *
 * Winters are mild in western Europe and by the north-east Pacific and hard in eastern Asia and
 * eastern North America: two waves around the globe. Fitted to rounded January and July normals of
 * 34 stations at 43 to 68 °N [C, normals M-med], half a degree to the mild side; they scatter about
 * it by 4 K in January and 2 K in July, and by up to 9 K in the worst. In the south, where the sea is
 * near, the mild end holds. A stated assumption to draw around widely, not a climatology.
 */
export function usualAir_degC(lake: LakeFacts, on: IsoDate): number {
	const height_K = LAPSE_K_m * (lake.elevation_m ?? 0);
	const northward = Math.abs(lake.latitude) - 50;
	const coldest =
		COLDEST_degC + COLDEST_PER_DEGREE_K * northward + continentality_K(lake) - height_K;
	const warmest = WARMEST_degC + WARMEST_PER_DEGREE_K * northward - height_K;
	return (coldest + warmest) / 2 - ((warmest - coldest) / 2) * coldness(lake, on);
}

function continentality_K({ latitude, longitude }: LakeFacts): number {
	if (latitude < 0) return CONTINENTALITY_K;
	return CONTINENTALITY_K * Math.cos((2 * (longitude - MILD_LONGITUDE) * Math.PI) / 180);
}

/** 1 on the coldest day of the year, -1 on the warmest. */
export function coldness({ latitude }: LakeFacts, on: IsoDate): number {
	const coldest = latitude < 0 ? COLDEST_DAY + YEAR_d / 2 : COLDEST_DAY;
	return Math.cos((2 * Math.PI * (dayOfYear(on) - coldest)) / YEAR_d);
}
