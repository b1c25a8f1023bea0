import type { IsoDate, WinterId } from '#lib/model/calendar.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

/** Growth runs to the winter's largest scored reading, inclusive; decay follows it. */
export type Phase = 'growth' | 'decay';

/** A reading that counts. Thicknesses are as measured; `null` is not measured. */
export interface ScoredReading {
	on: IsoDate;
	phase: Phase;
	total_m: number;
	clear_m: number | null;
	white_m: number | null;
	snow_m: number | null;
	/** The source says that the layers don't add up to the total, usually for slush in between. */
	layersDisagree: boolean;
	/** By plain daily means since freeze-up; for the baselines only. */
	plainFdd_degCd: number;
	plainTdd_degCd: number;
}

/** One winter of one lake with at least one scored reading. */
export interface LakeWinter {
	dataset: string;
	/** Dataset and code together: codes may repeat between datasets. */
	lakeKey: string;
	lake: LakeFacts;
	winter: WinterId;
	freezeUpOn: IsoDate;
	iceOutOn: IsoDate | null;
	/** The days of this winter only, sorted. */
	weather: WeatherDay[];
	/** Sorted by day. */
	readings: ScoredReading[];
}

/** A scored reading with the winter it belongs to. */
export interface Case {
	winter: LakeWinter;
	reading: ScoredReading;
	/** The scored reading before it in the same winter. */
	previous: ScoredReading | null;
}

export function casesOf(winters: readonly LakeWinter[]): Case[] {
	return winters.flatMap((winter) =>
		winter.readings.map((reading) => ({
			winter,
			reading,
			previous: winter.readings.findLast((other) => other.on < reading.on) ?? null
		}))
	);
}

/** The first of the winter's largest scored readings: its last one in growth. */
export function largestReading(winter: LakeWinter): ScoredReading | null {
	return winter.readings.findLast((reading) => reading.phase === 'growth') ?? null;
}

/**
 * A scored reading in the model's own form. Layers that disagree with the total are left out:
 * the total is what the next reading is scored against.
 */
export function asReading(scored: ScoredReading): Reading {
	const layers = scored.layersDisagree ? null : scored;
	return {
		id: scored.on,
		on: scored.on,
		place: null,
		kind: 'measured',
		holes: [
			{
				total_m: scored.total_m,
				clear_m: layers?.clear_m ?? null,
				white_m: layers?.white_m ?? null,
				snow_m: scored.snow_m,
				slush_m: null,
				freeboard_m: null
			}
		],
		core: null,
		by: null,
		secondHand: false,
		remark: null
	};
}
