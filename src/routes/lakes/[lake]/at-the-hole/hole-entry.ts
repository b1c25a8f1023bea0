import type { IsoDate } from '#lib/model/calendar.ts';
import { FormInput, type FormValues } from '#lib/ui/forms/form-input.ts';
import { readReading } from '#lib/ui/forms/reading-input.ts';
import type { Made } from '#lib/ui/offline/keep-then-send.ts';
import type { Units } from '#lib/ui/units-setting.ts';

interface Facts {
	lake: { id: string; name: string };
	site: string;
	today: IsoDate;
	units: Units;
}

/** What the form at the hole says, read by the rules of the server; the estimate is not at hand here. */
export function holeEntry(typed: FormValues, { lake, site, today, units }: Facts): Made {
	const place = typed['otherPlace']?.trim() || (typed['place'] ?? '');
	const input = new FormInput({ ...typed, place });
	const reading = readReading(input, { units, today, estimate_m: null });
	if (input.issues.length > 0) return { issues: input.issues };
	return {
		lake: { id: lake.id, name: lake.name },
		site,
		reading,
		position: positionIn(typed),
		changes: null
	};
}

function positionIn({
	latitude = '',
	longitude = ''
}: FormValues): Exclude<Made, { issues: unknown }>['position'] {
	if (latitude === '' || longitude === '') return null;
	const [north, east] = [Number(latitude), Number(longitude)];
	return Number.isFinite(north) && Number.isFinite(east)
		? { latitude: north, longitude: east }
		: null;
}
