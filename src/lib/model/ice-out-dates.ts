import type { IsoDate } from './calendar.ts';
import type { IceOutWindow } from './ensemble/ice-out.ts';
import type { IceOutDates } from './forecast.ts';

/** The recorded day of ice-out, else the window of the ensemble; `null` while hardly any of it opens. */
export function iceOutDates(
	recordedOn: IsoDate | null,
	window: IceOutWindow | null
): IceOutDates | null {
	if (recordedOn !== null) return { p10: recordedOn, p50: recordedOn, p90: recordedOn };
	if (window === null || window.p10 === null) return null;
	const { p10, p50, p90 } = window;
	return { p10, p50, p90 };
}
