import type { Fault, SourcePart } from '../contract.ts';
import type { Mapped } from '../read/mapped.ts';
import type { Mapping } from '../schema.ts';
import { hasTemperature } from './gaps.ts';

/** Why an answer is of no use although it was read, or `null` where it has a temperature. */
export function nothingMapped(
	mapping: Mapping,
	found: Mapped,
	used: Pick<Mapped, 'hours' | 'days'>,
	part: SourcePart
): Fault | null {
	if (hasAny(used)) return null;
	const paths = mapping.values.air?.path ?? mapping.values.max?.path ?? '';
	const text = hasAny(found)
		? `The answer has temperatures, but none for ${part === 'history' ? 'hours or days that are over' : 'what is to come'}; check the dates that the address asks for.`
		: `No temperature of the days asked for was found at ${paths}: the source may have none for them, or its answers have changed; try it again in the set-up.`;
	return { code: 'nothingMapped', text };
}

function hasAny({ hours, days }: Pick<Mapped, 'hours' | 'days'>): boolean {
	return hours.some(({ air_degC }) => air_degC !== null) || days.some(hasTemperature);
}
