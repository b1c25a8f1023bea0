import { columnChoices } from '#lib/server/services/column-choices.ts';

/** The units that each value can come in. */
export function unitsOfRoles(): Record<string, readonly string[]> {
	return Object.fromEntries(columnChoices().map(({ role, units }) => [role, units]));
}
