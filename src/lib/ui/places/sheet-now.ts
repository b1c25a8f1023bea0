import { STATUS_WORDS, statusSaid } from '../status-words.ts';
import type { TripSheetWords } from './trip-text.ts';

/** The sheet as it may be shown and sent by now: on an old copy of its page nothing counts as reached. */
export function sheetNow(sheet: TripSheetWords): TripSheetWords {
	const { shown } = sheet.loads;
	const said = shown.map((load) => ({
		...load,
		status: isReached(load) ? statusSaid('reached') : load.status
	}));
	return { ...sheet, loads: { ...sheet.loads, shown: said } };
}

export function isReached({ status }: { status: string }): boolean {
	return status === STATUS_WORDS.reached;
}
