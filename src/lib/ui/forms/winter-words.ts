import type { SiteEvent } from '#lib/model/site-winter.ts';
import { day } from '#lib/ui/format/day.ts';
import { depth } from '#lib/ui/format/length.ts';
import type { Units } from '#lib/ui/units-setting.ts';

/** An event in a sentence without its full stop. */
export function eventWords(event: SiteEvent, units: Units): string {
	switch (event.kind) {
		case 'reopened':
			return event.refrozeOn === null
				? `Opened again on ${day(event.on)}, not yet refrozen`
				: `Opened again on ${day(event.on)}, refrozen on ${day(event.refrozeOn)}`;
		case 'cleared':
			return `Snow cleared on ${day(event.on)}, ${depth(event.snow_m, units)} left`;
		case 'packed':
			return event.density_kg_m3 === null
				? `Snow packed on ${day(event.on)}`
				: `Snow packed on ${day(event.on)} to ${Math.round(event.density_kg_m3)} kg/m³`;
		case 'pumped':
			return `Water pumped on, ${depth(event.water_m, units)}, ${day(event.on)}`;
	}
}
