import { isIsoDate, winterOf } from '#lib/model/calendar.ts';
import { total_m } from '#lib/model/column.ts';
import type { Context } from '#lib/server/context.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';

/** What a typed thickness is held against: the estimate of its day, where there is one. */
export async function estimateOn(
	context: Context,
	lakeId: string,
	site: string,
	typed: string | null
) {
	const on = typed !== null && isIsoDate(typed) ? typed : null;
	const options = on === null ? { site } : { site, winter: winterOf(on), asOf: on };
	const { today, outlook } = await lakeView(context, lakeId, options);
	const column = outlook?.today && outlook.today.on === on ? outlook.today.column : null;
	return { today, estimate_m: column && total_m(column) };
}
