import type { IsoDate } from './calendar.ts';
import { isDrilled } from './hole.ts';
import type { Reading } from './reading.ts';
import type { WarmState } from './warmth.ts';

/** Hours wholly below freezing that a spell needs to end. Our rule, derived and cautious. */
export const REFREEZING_h = 72;
/** Frost that must come with them. Our rule, derived and cautious. */
export const REFREEZING_degCd = 15;

/** Where a warm spell stands on one day. */
export interface WarmDay {
	on: IsoDate;
	state: WarmState;
	/**
	 * First warm day of the spell, or day of the wet or candled core that withholds. Warmth after enough
	 * frost begins a new spell even if no hole has ended the last one.
	 */
	since: IsoDate | null;
	/** Last day with warm hours. A hole has to be newer. */
	lastWarmOn: IsoDate | null;
	/** A core logged as wet or candled that no sound one has followed. */
	badCoreOn: IsoDate | null;
	/** Sun has been on bare ice since the spell began: only a sound core ends it. */
	hadSunOnBareIce: boolean;
	/** Frost without a break since the last warm hour. */
	frost_h: number;
	frost_degCd: number;
	/** The thickest that the sheet is estimated to have been since freeze-up. */
	thickest_m: number;
}

/** No spell. */
export function calm(on: IsoDate): WarmDay {
	return {
		on,
		state: 'none',
		since: null,
		lastWarmOn: null,
		badCoreOn: null,
		hadSunOnBareIce: false,
		frost_h: 0,
		frost_degCd: 0,
		thickest_m: 0
	};
}

/** True once the frost has been long and hard enough; a hole still has to say so. */
export function isRefrozen(warm: WarmDay): boolean {
	return warm.frost_h >= REFREEZING_h && warm.frost_degCd >= REFREEZING_degCd;
}

/** True when frost and a hole, not one that somebody else told, have ended what was in force. */
export function isOver(state: WarmDay, readings: readonly Reading[]): boolean {
	if (state.state === 'none' || state.badCoreOn !== null) return false;
	if (state.lastWarmOn === null) return true;
	const lastWarmOn = state.lastWarmOn;
	return isRefrozen(state) && readings.some((reading) => ends(reading, state, lastWarmOn));
}

function ends(reading: Reading, state: WarmDay, lastWarmOn: IsoDate): boolean {
	const isNew = reading.on > lastWarmOn && reading.on <= state.on;
	const isGood = reading.core === 'sound' || (reading.core === null && !state.hadSunOnBareIce);
	// A tool that stuck has not been through what the thaw left, unless its core was looked at.
	const isThrough = reading.kind === 'measured' || reading.core === 'sound';
	return isNew && isGood && isThrough && isDrilled(reading) && !reading.secondHand;
}
