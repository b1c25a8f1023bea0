import type { DayColumn, HourColumn } from '../../storage/source-weather.ts';
import type { Mapping } from '../../weather/source/contract.ts';

export interface ToldColumns {
	hours: HourColumn[];
	days: DayColumn[];
}

/** The columns that a mapping asks for: where they are empty in an answer, the source has nothing. */
export function toldColumns({ values }: Mapping): ToldColumns {
	const common = [
		...(values.precipitation ? (['precipitation_kg_m2'] as const) : []),
		...(values.snowfall ? (['snowfall_kg_m2'] as const) : []),
		...(values.landSnow ? (['land_snow_m'] as const) : []),
		...(values.wind ? (['wind_m_s'] as const) : [])
	];
	const hasAir = values.air !== undefined || (values.min !== undefined && values.max !== undefined);
	return {
		hours: [...(hasAir ? (['air_degC'] as const) : []), ...common],
		days: [
			...(values.air ? (['air_degC'] as const) : []),
			...(values.min ? (['min_degC'] as const) : []),
			...(values.max ? (['max_degC'] as const) : []),
			...common
		]
	};
}
