import type { IsoDate } from '#lib/model/calendar.ts';
import type { Reading } from '#lib/model/reading.ts';
import { FormInput, type FormValues } from '#lib/ui/forms/form-input.ts';
import { readReading } from '#lib/ui/forms/reading-input.ts';
import type { Made } from '#lib/ui/offline/entry.ts';
import type { Units } from '#lib/ui/units-setting.ts';

interface Facts {
	lake: { id: string; name: string };
	site: string;
	today: IsoDate;
	units: Units;
	reading: Reading;
	version: number;
}

/** What the form makes of a stored reading, read by the rules of the server. */
export function changeEntry(typed: FormValues, facts: Facts): Made {
	const { lake, site, today, units, reading: stored, version } = facts;
	const input = new FormInput(typed);
	const reading = readReading(input, { units, today, estimate_m: null, stored });
	if (input.issues.length > 0) return { issues: input.issues, reading };
	return {
		lake: { id: lake.id, name: lake.name },
		site,
		reading,
		form: 'reading',
		position: null,
		changes: { readingId: stored.id, version: Number(typed['version']) || version }
	};
}
