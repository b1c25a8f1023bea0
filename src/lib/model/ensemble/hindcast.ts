import { daysBetween, type IsoDate } from '../calendar.ts';
import type { PredictedReading } from '../hindsight.ts';
import type { Quantiles } from '../forecast.ts';
import { holeMeans } from '../hole-layers.ts';
import { placeKind } from '../place-kind.ts';
import type { Reading } from '../reading.ts';
import { siteEstimate, type SiteEstimateInput } from '../site-estimate.ts';
import { siteSeason } from '../site-season.ts';
import { quantileOfSorted } from './quantiles.ts';

/**
 * Each thickness that was measured, not told, on the open part of a site, by day, against what had been
 * estimated from the weather and the readings of the days before. One run of the winter gives them all.
 *
 * Readings of one day are told against the same estimate: none of them helps another.
 */
export function hindcast(input: SiteEstimateInput): PredictedReading[] {
	const site = siteSeason({ ...input, until: input.asOf });
	if (site === null) return [];
	const told: PredictedReading[] = [];
	let lastOn: IsoDate | null = null;
	siteEstimate(site, {
		...input,
		until: input.asOf,
		onDay: ({ on, before }) => {
			if (before === null) return;
			const measured = site.readings.flatMap((reading) => measuredOn(reading, on));
			if (measured.length === 0) return;
			const predicted = quantiles(before.total_m);
			const daysSince = lastOn === null ? null : daysBetween(lastOn, on);
			told.push(...measured.map((each) => ({ ...each, on, predicted, daysSince })));
			lastOn = on;
		}
	});
	return told;
}

function measuredOn(
	reading: Reading,
	on: IsoDate
): Pick<PredictedReading, 'readingId' | 'measured_m'>[] {
	if (reading.on !== on || reading.kind !== 'measured' || reading.secondHand) return [];
	if (placeKind(reading.place) !== 'open') return [];
	const measured_m = holeMeans(reading.holes).total_m;
	return measured_m === null ? [] : [{ readingId: reading.id, measured_m }];
}

function quantiles(values: Float64Array): Quantiles {
	const sorted = values.toSorted();
	return {
		p05: quantileOfSorted(sorted, 0.05),
		p10: quantileOfSorted(sorted, 0.1),
		p50: quantileOfSorted(sorted, 0.5),
		p90: quantileOfSorted(sorted, 0.9),
		p95: quantileOfSorted(sorted, 0.95)
	};
}
