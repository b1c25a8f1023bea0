import { addDays, dayOfYear, type IsoDate } from '../../src/lib/model/calendar.ts';

/** A winter of our own making in the columns of the tidy winters: cold, with a snowfall every ten days. */
export function winterCsv(from: IsoDate, days: number, celsius?: (on: IsoDate) => number): string {
	const rows = Array.from({ length: days }, (_, index) => {
		const on = addDays(from, index);
		const tmean_c = celsius?.(on) ?? seasonal(on);
		const water_mm = index % 10 === 0 ? 3 : 0;
		return [on, tmean_c.toFixed(1), '', '', water_mm, '', '', tmean_c < 0 ? water_mm : 0, 'made'];
	});
	const header =
		'date,tmean_c,tmin_c,tmax_c,precip_mm,snowfall_cm,snow_depth_cm,snowfall_we_mm,source';
	return `${header}\n${rows.map((row) => row.join(',')).join('\n')}\n`;
}

/** A year's swing about −2 °C, coldest in the middle of January. */
function seasonal(on: IsoDate): number {
	return -2 - 13 * Math.cos(((dayOfYear(on) - 15) / 365) * 2 * Math.PI);
}

/** A text as a stream in pieces of odd size. */
export function inPieces(text: string, size = 1013): ReadableStream<Uint8Array> {
	const bytes = new TextEncoder().encode(text);
	let at = 0;
	return new ReadableStream({
		pull(controller) {
			if (at >= bytes.length) controller.close();
			else controller.enqueue(bytes.subarray(at, (at += size)));
		}
	});
}
