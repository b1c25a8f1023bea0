import type { Case, LakeWinter } from './lake-winter.ts';
import { casesOf } from './lake-winter.ts';
import { mean } from './scores.ts';

/** Thickness lost to a degree-day of thaw in the simplest law, as the contract asks. */
const THAW_cm_degCd = 0.35;

/** Which residuals may tell a baseline its own spread: those of what it has not been told. */
export type LeftOut = 'lake' | 'winter';

/** A simple law that the model has to beat, with a Gaussian of its own left-out spread. */
export interface Baseline {
	id: string;
	leftOut: LeftOut;
	/** `null` where the law has nothing to go by. */
	predict(of: Case): number | null;
}

/**
 * The laws, α in cm (°C·d)^-½ over plain daily means, gross. 1.7 tells whether the
 * selection is right: on the winters that the parameters were fitted to it scores 7.9 and +0.4 cm.
 */
export function baselinesFor(winters: readonly LakeWinter[]): Baseline[] {
	const alphas = alphaSamples(winters);
	const own = (of: Case) => ownAlpha(alphas, of);
	return [
		{ id: 'alpha24', leftOut: 'lake', predict: (of) => stefan_m(2.4, of) },
		{
			id: 'alpha17',
			leftOut: 'lake',
			predict: (of) => stefan_m(1.7, of)
		},
		{
			id: 'alphaOtherLakes',
			leftOut: 'lake',
			predict: (of) => stefan_m(otherLakesAlpha(alphas, of), of)
		},
		{
			id: 'alphaOwn',
			leftOut: 'winter',
			predict: (of) => stefan_m(own(of), of)
		},
		{
			id: 'fromLastReading',
			leftOut: 'winter',
			predict: (of) => fromLastReading_m(own(of), THAW_cm_degCd, of)
		},
		{
			id: 'fromLastReadingFrostOnly',
			leftOut: 'winter',
			predict: (of) => fromLastReading_m(own(of), 0, of)
		},
		{
			id: 'lastReading',
			leftOut: 'winter',
			predict: (of) => of.previous?.total_m ?? null
		}
	];
}

interface AlphaSample {
	lakeKey: string;
	winter: string;
	alpha_cm: number;
}

function alphaSamples(winters: readonly LakeWinter[]): AlphaSample[] {
	return casesOf(winters)
		.filter(({ reading }) => reading.phase === 'growth' && reading.plainFdd_degCd > 0)
		.map(({ winter, reading }) => ({
			lakeKey: winter.lakeKey,
			winter: winter.winter,
			alpha_cm: (reading.total_m * 100) / Math.sqrt(reading.plainFdd_degCd)
		}));
}

/** Each other lake counts once, however often it was measured. */
function otherLakesAlpha(samples: readonly AlphaSample[], of: Case): number | null {
	const others = new Map<string, number[]>();
	for (const { lakeKey, alpha_cm } of samples) {
		if (lakeKey === of.winter.lakeKey) continue;
		others.set(lakeKey, [...(others.get(lakeKey) ?? []), alpha_cm]);
	}
	return mean([...others.values()].flatMap((alphas) => mean(alphas) ?? []));
}

function ownAlpha(samples: readonly AlphaSample[], of: Case): number | null {
	return mean(
		samples
			.filter(
				(sample) => sample.lakeKey === of.winter.lakeKey && sample.winter !== of.winter.winter
			)
			.map((sample) => sample.alpha_cm)
	);
}

function stefan_m(alpha_cm: number | null, { reading }: Case): number | null {
	return alpha_cm === null ? null : (alpha_cm / 100) * Math.sqrt(reading.plainFdd_degCd);
}

function fromLastReading_m(
	alpha_cm: number | null,
	melt_cm_degCd: number,
	{ reading, previous }: Case
): number | null {
	if (alpha_cm === null || !previous) return null;
	const frost_degCd = reading.plainFdd_degCd - previous.plainFdd_degCd;
	const thaw_degCd = reading.plainTdd_degCd - previous.plainTdd_degCd;
	const grown_m = Math.sqrt(previous.total_m ** 2 + (alpha_cm / 100) ** 2 * frost_degCd);
	return Math.max(0, grown_m - (melt_cm_degCd / 100) * thaw_degCd);
}
