import { addDays, winterOf } from '#lib/model/calendar.ts';
import type { RunningApp } from '../keeping-up/running-app.ts';

/** Days of weather, each of 24 hours. */
const YEAR_d = 365;
const FROZEN_d = 60;
const READ_AGO_d = [40, 25, 8];

export interface HourlyLake {
	id: string;
	/** Hours that are stored. */
	hours: number;
}

/** A lake that froze over two months ago, with a year of hours up to yesterday and three readings. */
export async function hourlyLake(app: RunningApp): Promise<HourlyLake> {
	const today = new Date().toISOString().slice(0, 10);
	const freezeUpOn = addDays(today, -FROZEN_d);
	const place = { latitude: 47.4, longitude: -38.2, timeZone: 'UTC', area_km2: 2, meanDepth_m: 4 };
	const facts = { name: 'Invented by the hour', water: 'lake', ...place };
	const { id } = await app.api<{ id: string }>('POST', '/lakes', facts);
	await app.api('PUT', `/lakes/${id}/winters/${winterOf(freezeUpOn)}`, { freezeUpOn });
	await app.api('POST', `/lakes/${id}/weather`, csv(addDays(today, -YEAR_d)));
	const readings = READ_AGO_d.map((ago) => ({
		on: addDays(today, -ago),
		place: 'Off the point',
		kind: 'measured',
		holes: [0, 1, 2].map((hole) => ({ total_m: 0.12 + (FROZEN_d - ago) / 250 + hole / 100 }))
	}));
	await app.api('POST', `/lakes/${id}/readings`, readings);
	return { id, hours: 24 * YEAR_d };
}

/** Frost since freeze-up, mild before it, with a day's wave and spells. */
function csv(from: string): string {
	const rows = Array.from({ length: 24 * YEAR_d }, (_, hour) => {
		const day = Math.floor(hour / 24);
		const mean_degC = day < YEAR_d - FROZEN_d ? 9 : -9;
		const wave_K = 3 * Math.cos((Math.PI * (hour - 14)) / 12) + 4 * Math.sin(hour / 70);
		const at = `${addDays(from, day)}T${String(hour % 24).padStart(2, '0')}:00:00Z`;
		return `${at},${(mean_degC + wave_K).toFixed(1)},${hour % 60 < 3 ? 0.3 : 0}`;
	});
	return `time,temperature_c,precip_mm\n${rows.join('\n')}\n`;
}
