import type { JsonValue } from 'jsonpath-rfc9535';
import { isMissingCode, readNumber, TRACE, type Decimal } from '../../cells/numbers.ts';
import { isTemperatureRole, type ValueRole } from '../../cells/units.ts';

/** A number, a missing value, or something else than either. */
export type RawNumber = number | null | 'other';

export function rawNumber(
	raw: JsonValue,
	role: ValueRole,
	unit: string,
	decimal: Decimal
): RawNumber {
	if (raw === null || raw === '') return null;
	if (typeof raw !== 'number' && typeof raw !== 'string') return 'other';
	const text = typeof raw === 'string' ? raw.trim() : String(raw);
	if (isMissingCode(text, unit.startsWith('0.1'))) return null;
	if (typeof raw === 'number') return Number.isFinite(raw) ? raw : null;
	if (TRACE.test(text) && !isTemperatureRole(role) && role !== 'wind') return 0;
	const { value, reason } = readNumber(text, decimal);
	return reason === null ? value : 'other';
}
