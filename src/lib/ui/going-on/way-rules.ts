import type { AppliedRule } from '#lib/model/forecast.ts';
import { ENTERING_m_s, LOADED_m_s, NEAR_SHORE_m_s } from '#lib/model/moving/pace.ts';
import { speed } from '../format/speed.ts';
import type { Units } from '../units-setting.ts';

/** How vehicles go over ice, whatever its thickness. */
export function wayRules(units: Units): AppliedRule[] {
	return [
		{
			code: 'loaded',
			text: `Loaded, never faster than ${speed(LOADED_m_s, units)}, over deep water too; onto the ice and off it ${speed(ENTERING_m_s, units)} at most.`,
			source: 'worksite practice, as reported'
		},
		{
			code: 'nearShore',
			text: `Near a shore no faster than a walk, ${speed(NEAR_SHORE_m_s, units)}, and towards it at an angle: it throws the wave back.`,
			source: 'common practice, from memory'
		},
		{
			code: 'halfTheWave',
			text: 'Half of the wave’s speed still keeps under it where the water is only a quarter as deep as thought.',
			source: 'the wave: Squire and others 1996, computed; half is our choice'
		},
		{
			code: 'spacing',
			text: 'From one load to the next 100 times the thickness that one of them asks for, as each says above; nearer ones count together.',
			source: 'common practice, from memory; 53 to 97 times in TM 5-852-1, table 2-1'
		},
		{
			code: 'acrossCracks',
			text: 'Over a crack at right angles, never along it.',
			source: 'common practice, no source'
		}
	];
}
