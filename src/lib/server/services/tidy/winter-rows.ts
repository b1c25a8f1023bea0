import type { IsoDate } from '#lib/model/calendar.ts';
import { freezeUpSpan } from '#lib/model/freeze-up.ts';
import type { SiteEvent, SiteWinter } from '#lib/model/site-winter.ts';
import type { EventRow, OwnFreezeUpRow } from './own-rows.ts';
import { fromCentimetres, rounded, type Cell } from './write-table.ts';

export const FREEZE_UP_HEADER = [
	'lake',
	'winter',
	'freeze_up_date',
	'ice_out_date',
	'notes',
	'freeze_up_from',
	'freeze_up_by'
];

export const EVENT_HEADER = [
	'lake',
	'winter',
	'on',
	'kind',
	'refroze_on',
	'snow_cm',
	'density_kg_m3',
	'water_cm'
];

/** A row of `freezeup.csv`; between two days the middle one stands, as the model has it. */
export function freezeUpCells(code: string, record: SiteWinter): Cell[] {
	const isSpan = record.freezeUpBy !== null;
	return [
		code,
		record.winter,
		freezeUpSpan(record)?.middle ?? null,
		record.iceOutOn,
		notesOf(record),
		isSpan ? record.freezeUpOn : null,
		record.freezeUpBy
	];
}

/** The first day from which the ice is no longer what the weather alone made of it. */
export function touchedFrom({ events }: SiteWinter): IsoDate | null {
	const days = events.filter(({ kind }) => kind !== 'reopened').map(({ on }) => on);
	return days.toSorted()[0] ?? null;
}

/** Whoever scores the folder leaves out a winter whose note has the word “opened”. */
function notesOf(record: SiteWinter): string {
	const { freezeUpOn, freezeUpBy, events } = record;
	const span = freezeUpBy === null ? [] : [`freeze-up between ${freezeUpOn} and ${freezeUpBy}`];
	const openings = events.filter(({ kind }) => kind === 'reopened');
	const touched = touchedFrom(record);
	return [
		...span,
		...openings.map(({ on }) => `opened again on ${on}`),
		...(touched === null ? [] : [`ice worked on: readings from ${touched} on are not in ice.csv`])
	].join('; ');
}

/** A row of `events.csv`. */
export function eventCells(code: string, winter: string, event: SiteEvent): Cell[] {
	return [
		code,
		winter,
		event.on,
		event.kind,
		event.kind === 'reopened' ? event.refrozeOn : null,
		event.kind === 'cleared' ? rounded(event.snow_m, 100) : null,
		event.kind === 'packed' ? rounded(event.density_kg_m3) : null,
		event.kind === 'pumped' ? rounded(event.water_m, 100) : null
	];
}

/** A winter's record as its schema takes it, from its row and its events. */
export function winterDraft(row: OwnFreezeUpRow, events: readonly EventRow[]) {
	return {
		freezeUpOn: row.freeze_up_from ?? row.freeze_up_date,
		freezeUpBy: row.freeze_up_from === null ? null : row.freeze_up_by,
		iceOutOn: row.ice_out_date,
		events: events.map(eventDraft)
	};
}

function eventDraft({ on, kind, refroze_on, snow_cm, density_kg_m3, water_cm }: EventRow) {
	switch (kind) {
		case 'reopened':
			return { kind, on, refrozeOn: refroze_on };
		case 'cleared':
			return { kind, on, snow_m: fromCentimetres(snow_cm) };
		case 'packed':
			return { kind, on, density_kg_m3 };
		case 'pumped':
			return { kind, on, water_m: fromCentimetres(water_cm) };
		default:
			return { kind, on };
	}
}
