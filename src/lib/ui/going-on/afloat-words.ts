import type { Afloat } from '#lib/model/parked/afloat.ts';
import { fineLength } from '../format/fine-length.ts';
import { counted } from '../format/number.ts';
import type { Units } from '../units-setting.ts';
import { standing } from './arithmetic.ts';

/** Longer than this nobody waits and nothing stays as it is. */
const LONG_h = 30 * 24;
const DAYS_FROM_h = 48;

interface Standing {
	afloat: Afloat | null;
	parked_h: number;
	isVehicle: boolean;
}

/** How the ice floats under a load that stands, or that would stop, at the lower bound of the ice.
 * Nothing of people who keep moving. */
export function afloatSentences({ afloat, parked_h, isVehicle }: Standing, units: Units): string[] {
	if (!isVehicle && parked_h === 0) return [];
	if (afloat === null) return ['There is no ice at the lower bound that could float under it.'];
	const { freeboard_m, sagAtOnce_m, sag_m, lasts_h } = afloat;
	if (freeboard_m <= 0)
		return [
			'The snow weighs as much as this ice can float, or more: water comes up under anything that stands on it.'
		];
	const floats = `By the lower bound the ice floats ${fineLength(freeboard_m, 'down', units)} above the water, with the snow on it.`;
	const gives =
		parked_h > 0
			? `Under it the ice gives ${fineLength(sagAtOnce_m, 'up', units)} at once and ${fineLength(sag_m, 'up', units)} when it has stood ${standing(parked_h)}.`
			: `Should it stop, the ice gives ${fineLength(sagAtOnce_m, 'up', units)} at once, three times as much after two hours and ten times after a day.`;
	return [floats, gives, lastsSentence(lasts_h)];
}

function lastsSentence(lasts_h: number): string {
	return lasts_h < 1
		? 'Its top would be under water within the hour.'
		: `Its top would stay above the water for ${spanOf(lasts_h)}.`;
}

/** Rounded down. */
function spanOf(lasts_h: number): string {
	if (lasts_h >= LONG_h) return 'more than a month';
	return lasts_h < DAYS_FROM_h
		? `about ${counted(Math.floor(lasts_h), 'hour')}`
		: `about ${counted(Math.floor(lasts_h / 24), 'day')}`;
}
