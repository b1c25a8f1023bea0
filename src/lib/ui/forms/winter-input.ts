import { winterOf, winterSpan, type IsoDate, type WinterId } from '#lib/model/calendar.ts';
import type { SiteEvent, SiteWinter } from '#lib/model/site-winter.ts';
import type { FormInput, FormValues } from './form-input.ts';

export type Dates = Pick<SiteWinter, 'freezeUpOn' | 'freezeUpBy' | 'iceOutOn'>;

/** Freeze-up and ice-out of one winter, checked against each other and the winter's own days. */
export function readWinterDates(input: FormInput, winter: WinterId): Dates {
	const on = dayWithin(input, 'freezeUpOn', winter);
	const by = dayWithin(input, 'freezeUpBy', winter);
	const iceOutOn = dayWithin(input, 'iceOutOn', winter);
	if (on === null && by !== null) {
		input.refuse(
			'freezeUpOn',
			'Type the first day too, or move the second one up if you know the day.'
		);
	}
	if (on !== null && by !== null && by < on) {
		input.refuse(
			'freezeUpBy',
			`${by} is before ${on}. The second day is the last it may have been.`
		);
	}
	if (iceOutOn !== null && on === null) {
		input.refuse('freezeUpOn', 'Type the day it froze over too: ice goes out only after that.');
	}
	const latest = by ?? on;
	if (iceOutOn !== null && latest !== null && iceOutOn <= latest) {
		input.refuse(
			'iceOutOn',
			`Ice-out on ${iceOutOn} is not after freeze-up, ${latest}. Mend one of them.`
		);
	}
	return { freezeUpOn: on, freezeUpBy: by === on ? null : by, iceOutOn };
}

/** The days as their form shows them. */
export function dateValues({ freezeUpOn, freezeUpBy, iceOutOn }: Dates): FormValues {
	return { freezeUpOn: freezeUpOn ?? '', freezeUpBy: freezeUpBy ?? '', iceOutOn: iceOutOn ?? '' };
}

/** One event of a site; `null` when something has to be mended. */
export function readEvent(input: FormInput, winter: WinterId, today: IsoDate): SiteEvent | null {
	const on = dayWithin(input, 'on', winter);
	if (!input.text('on')) input.refuse('on', 'Type the day.');
	const event = on === null ? null : ofKind(input, on, winter);
	const refrozeOn = event?.kind === 'reopened' ? event.refrozeOn : null;
	for (const [field, day] of Object.entries({ on, refrozeOn })) {
		if (day === null || day <= today) continue;
		input.refuse(
			field,
			`${day} is after today at the lake, ${today}. Store it once it has happened: a plan that nobody carries out would count as done.`
		);
	}
	return input.issues.length > 0 ? null : event;
}

function ofKind(input: FormInput, on: IsoDate, winter: WinterId): SiteEvent | null {
	const kind = input.text('kind');
	switch (kind) {
		case 'reopened': {
			const refrozeOn = dayWithin(input, 'refrozeOn', winter);
			if (refrozeOn !== null && refrozeOn <= on) {
				input.refuse(
					'refrozeOn',
					`${refrozeOn} is not after ${on}, when it opened. Mend one of them.`
				);
			}
			return { kind, on, refrozeOn };
		}
		case 'cleared': {
			const limits = { from: 0, to: 3, isRequired: true };
			return { kind, on, snow_m: input.quantity('snow', 'length', limits) ?? 0 };
		}
		case 'packed':
			return {
				kind,
				on,
				density_kg_m3: input.quantity('density', 'density', { from: 100, to: 700 })
			};
		case 'pumped': {
			const limits = { from: 0.001, to: 1, isRequired: true };
			return { kind, on, water_m: input.quantity('water', 'length', limits) ?? 0 };
		}
		default:
			input.refuse('kind', `“${kind ?? ''}” is no event that is kept. Choose one of the four.`);
			return null;
	}
}

function dayWithin(input: FormInput, field: string, winter: WinterId): IsoDate | null {
	const day = input.day(field);
	if (day === null || winterOf(day) === winter) return day;
	const [first, last] = winterSpan(winter);
	input.refuse(
		field,
		`${day} is not in the winter ${winter}, ${first} to ${last}. Mend the day, or choose its winter above.`
	);
	return null;
}
