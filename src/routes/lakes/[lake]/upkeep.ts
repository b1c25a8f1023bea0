import type { LakeView } from '#lib/server/services/lake-view.ts';

/** How old the weather of a view is and whose, light enough for a page. */
export function upkeepOf({ upkeep, isPresent }: Pick<LakeView, 'upkeep' | 'isPresent'>) {
	const { lastObservedAge_h, forecastAge_h, isForecastUsed, forecastTo } = upkeep;
	return {
		/** In a look back ages are those of the day that is asked for. */
		isThen: !isPresent,
		lastObservedAge_h,
		forecastAge_h,
		isForecastUsed,
		forecastTo,
		attributions: upkeep.attributions.map(({ source, text, url, licence }) => ({
			source,
			text,
			url,
			licence
		})),
		sentences: upkeep.sentences.map(({ text }) => text)
	};
}

export type Upkeep = ReturnType<typeof upkeepOf>;
