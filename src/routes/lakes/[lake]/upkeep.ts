import type { LakeView } from '#lib/server/services/lake-view.ts';

/** How old the weather of a view is and whose, light enough for a page. */
export function upkeepOf({ upkeep }: Pick<LakeView, 'upkeep'>) {
	const { lastObservedAge_h, forecastAge_h, isForecastUsed, forecastTo } = upkeep;
	return {
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
