import type { Context } from '../../context.ts';
import { storeAsAsked } from '../../storage/as-asked.ts';
import { markForJoining } from '../../storage/joined-days.ts';
import { refetchable } from '../../storage/refetchable.ts';
import { ROWS_AT_ONCE, storeHours, storeSourceDays } from '../../storage/source-weather.ts';
import type { Mapping, SourceAnswer, Span } from '../../weather/source/contract.ts';
import type { Storing } from './asking.ts';
import { toldColumns } from './told-columns.ts';

/** Stores what was measured, whole or not at all, and notes its days for joining. */
export async function storeHistory(
	db: Context['db'],
	{ use, asked, mapping }: Storing & { mapping: Mapping },
	{ hours, days }: Pick<SourceAnswer, 'hours' | 'days'>,
	{ from, to }: Span
): Promise<number | 'outdated'> {
	if (hours.length + days.length === 0) return 0;
	const erasing = toldColumns(mapping);
	const inner = hours.slice(1, -1);
	return refetchable(db, (connection) =>
		storeAsAsked(connection, asked, async (tx) => {
			// The first and the last hour may be told in part only, where the answer begins or ends in them.
			await storeHours(tx, 'source_hour', use.id, hours.slice(0, 1));
			await storeHours(tx, 'source_hour', use.id, hours.slice(1).slice(-1));
			for (let at = 0; at < inner.length; at += ROWS_AT_ONCE) {
				const part = inner.slice(at, at + ROWS_AT_ONCE);
				await storeHours(tx, 'source_hour', use.id, part, erasing.hours);
			}
			for (let at = 0; at < days.length; at += ROWS_AT_ONCE) {
				await storeSourceDays(tx, use.id, days.slice(at, at + ROWS_AT_ONCE), erasing.days);
			}
			await markForJoining(tx, use.lake_id, from, to);
			return hours.length + days.length;
		})
	);
}
