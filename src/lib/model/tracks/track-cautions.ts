import type { AppliedRule } from '../forecast.ts';
import { METRIC_WORDS, type Words } from '../words.ts';
import { bank_kg_m, bankWidth_m, widthAlone_m, type Clearing } from './bank-load.ts';

const NO_SOURCE = 'common practice, no source';
/** A bank that is spread this wide is no bank. */
const WIDEST_m = 50;

/** How lengths on the ground enter the texts: rounded up. */
export interface GroundWords {
	length(length_m: number): string;
	/** What a bank's load is told for. */
	step: { name: string; length_m: number };
}

export const METRIC_GROUND: GroundWords = {
	length: (length_m) => `${Math.ceil(length_m - 1e-6)} m`,
	step: { name: 'metre', length_m: 1 }
};

/** What a cleared track brings with it, each with its source. `clearing` is of the first clearing. */
export function trackCautions(
	clearing: Clearing | null,
	ground: GroundWords = METRIC_GROUND,
	words: Words = METRIC_WORDS
): AppliedRule[] {
	return [
		...(clearing === null ? [] : bankRules(clearing, ground, words)),
		{
			code: 'bankCracks',
			text: 'Cracks open along the banks and let water up: stay in the middle, do not park beside a bank, and drill there before anything crosses it. A wet crack halves what the ice carries, two that cross quarter it.',
			source: 'common practice, no source; the factors from memory'
		},
		{
			code: 'besideTrack',
			text: 'Beside the track and under its banks the snow stays, and the ice is thinner than on it. What the track carries says nothing of the ice a step aside: turn and pass only where it was drilled.',
			source: 'the layered law of conduction'
		},
		{
			code: 'clearingIsALoad',
			text: 'Whoever clears is the first load on it: hold the person and the machine against the bound of that day, and against the ice under the snow, which the clearing shows for the first time.',
			source: NO_SOURCE
		},
		{
			code: 'traffic',
			text: 'Traffic on one line tires the ice: drill again along it, spread the lines, and shut it when cracks turn wet.',
			source:
				'Gold 1971 names repeated loads as a cause of failure; the rest is common practice, no source'
		},
		{
			code: 'bareIce',
			text: 'Bare ice feels the weather first: a sudden fall in temperature cracks it and halves what it carries, and from late winter on the sun rots it while the air is still below freezing.',
			source: 'the rules of cold snaps and of sun on bare ice; the halving from memory'
		},
		{
			code: 'drift',
			text: 'Wind fills a track between its banks with more snow than falls, which is not estimated: measure what lies on it.',
			source: NO_SOURCE
		}
	];
}

function bankRules(clearing: Clearing, ground: GroundWords, words: Words): AppliedRule[] {
	const each_kg_m = bank_kg_m(clearing);
	if (each_kg_m <= 0) return [];
	const total_m = clearing.clear_m + clearing.white_m;
	const wide_m = bankWidth_m(clearing);
	const { name, length_m } = ground.step;
	const says = `Of a track ${ground.length(clearing.width_m)} wide each bank gets ${words.mass(each_kg_m * length_m)} of snow on every ${name} of its length.`;
	const spread =
		wide_m === null || wide_m > WIDEST_m
			? 'The sheet floats hardly more than the snow that lies on it: any bank puts the edge under water.'
			: `Spread each over ${ground.length(wide_m)} or more, or its weight puts the edge under water.`;
	const together =
		clearing.width_m < widthAlone_m(total_m)
			? [
					{
						code: 'narrow',
						text: `A sheet of that thickness hangs together over ${ground.length(widthAlone_m(total_m))}: a narrower track sinks with its banks, and water may come up on it.`,
						source: 'Squire and others 1996, from memory, and our own limit'
					}
				]
			: [];
	return [
		{
			code: 'bankLoad',
			text: `${says} ${spread} Banks grow with every clearing: push the snow far, or carry it off.`,
			source: 'Archimedes; that banks are spread is common practice, no source'
		},
		...together
	];
}
