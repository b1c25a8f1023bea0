import type { Context } from '../../context.ts';
import { storeAsAsked } from '../../storage/as-asked.ts';
import { markForJoining } from '../../storage/joined-days.ts';
import { refetchable } from '../../storage/refetchable.ts';
import { ROWS_AT_ONCE, storeHours, storeSourceDays } from '../../storage/source-weather.ts';
import type { SourceAnswer, Span } from '../../weather/source/contract.ts';
import type { Storing } from './ask-part.ts';

/** Stores what was measured, whole or not at all, and notes its days for joining. */
export async function storeHistory(
	db: Context['db'],
	{ use, asked }: Storing,
	{ hours, days }: Pick<SourceAnswer, 'hours' | 'days'>,
	{ from, to }: Span
): Promise<number | 'outdated'> {
	if (hours.length + days.length === 0) return 0;
	return refetchable(db, (connection) =>
		storeAsAsked(connection, asked, async (tx) => {
			for (let at = 0; at < hours.length; at += ROWS_AT_ONCE) {
				await storeHours(tx, 'source_hour', use.id, hours.slice(at, at + ROWS_AT_ONCE));
			}
			for (let at = 0; at < days.length; at += ROWS_AT_ONCE) {
				await storeSourceDays(tx, use.id, days.slice(at, at + ROWS_AT_ONCE));
			}
			await markForJoining(tx, use.lake_id, from, to);
			return hours.length + days.length;
		})
	);
}
