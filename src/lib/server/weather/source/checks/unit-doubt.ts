import { outsideOf } from '../../cells/plausible.ts';
import { WORDS } from '../../cells/role-words.ts';
import { isTemperatureRole, toSi, VALUE_ROLES, type ValueRole } from '../../cells/units.ts';
import type { Fault } from '../contract.ts';
import type { Mapped } from '../read/mapped.ts';
import type { Mapping } from '../schema.ts';

/** Single values may be slips; from this share on it is the unit that is wrong. */
const SHARE = 0.2;
const FEWEST = 3;

/** Hotter than any lake with ice has seen for an hour's mean, a lowest and a highest temperature. */
const TOO_HOT_degC = { air: 45, min: 40, max: 55 } as const;

export interface UnitDoubt {
	role: ValueRole;
	fault: Fault;
}

/** Roles whose numbers can't be in the unit that they are said to be in. */
export function unitDoubts(mapping: Mapping, { samples, tally }: Mapped): UnitDoubt[] {
	return VALUE_ROLES.flatMap((role) => {
		const unit = mapping.values[role]?.unit;
		const numbers = (samples.get(role) ?? []).filter((value) => value !== 0);
		if (unit === undefined || numbers.length < FEWEST) return [];
		const impossible = tally.count('impossible', role);
		const isWrong = impossible >= FEWEST && impossible > SHARE * numbers.length;
		if (isWrong || isTooHot(role, unit, numbers))
			return [{ role, fault: doubt(role, unit, numbers) }];
		return [];
	});
}

function isTooHot(role: ValueRole, unit: string, numbers: readonly number[]): boolean {
	if (role !== 'air' && role !== 'min' && role !== 'max') return false;
	const hot = numbers.filter((value) => toSi(role, unit, value, 1) > TOO_HOT_degC[role]);
	return hot.length >= FEWEST;
}

function doubt(role: ValueRole, unit: string, numbers: readonly number[]): Fault {
	const better = isTemperatureRole(role) ? betterUnit(role, unit, numbers) : null;
	const extreme = numbers.reduce(
		(far, value) => (Math.abs(value) > Math.abs(far) ? value : far),
		0
	);
	const remedy = better ? `are they ${better}? Choose it if so` : 'choose the right unit';
	const rest = isTemperatureRole(role)
		? 'Nothing of this answer is used until then.'
		: 'They are left out until then.';
	const text = `Values such as ${Math.round(extreme * 10) / 10} can't be ${WORDS[role]} in ${unit}: ${remedy}, and try again. ${rest}`;
	return { code: 'unitDoubt', text };
}

/** The unit in which all these temperatures can be; of several the one that is more common. */
function betterUnit(role: ValueRole, unit: string, numbers: readonly number[]): string | null {
	const others = ['°C', '°F', 'K', '0.1 °C'].filter((other) => other !== unit);
	const isPossible = (other: string) =>
		numbers.every((value) => outsideOf(role, toSi(role, other, value, 1), 'hourly') === null) &&
		!isTooHot(role, other, numbers);
	return others.find(isPossible) ?? null;
}
