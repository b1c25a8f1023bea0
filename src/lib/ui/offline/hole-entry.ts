import type { IsoDate } from '#lib/model/calendar.ts';
import { FormInput, type FormValues } from '../forms/form-input.ts';
import { readReading } from '../forms/reading-input.ts';
import type { Units } from '../units-setting.ts';
import type { Made } from './entry.ts';
import type { Waiting } from './waiting.ts';

interface Facts {
	lake: { id: string; name: string };
	site: string;
	today: IsoDate;
	units: Units;
	/** Which of the two forms it is: at the hole, or for a whole visit. */
	form: Waiting['form'];
}

/** What a form for a new reading says, read by the rules of the server; the estimate is not at hand here. */
export function holeEntry(typed: FormValues, { lake, site, today, units, form }: Facts): Made {
	const place = typed['otherPlace']?.trim() || (typed['place'] ?? '');
	const input = new FormInput({ ...typed, place });
	const reading = readReading(input, { units, today, estimate_m: null });
	if (input.issues.length > 0) return { issues: input.issues, reading };
	return {
		lake: { id: lake.id, name: lake.name },
		site,
		reading,
		form,
		position: positionIn(typed),
		changes: null
	};
}

function positionIn({ latitude = '', longitude = '' }: FormValues): Waiting['position'] {
	if (latitude === '' || longitude === '') return null;
	const [north, east] = [Number(latitude), Number(longitude)];
	return Number.isFinite(north) && Number.isFinite(east)
		? { latitude: north, longitude: east }
		: null;
}
