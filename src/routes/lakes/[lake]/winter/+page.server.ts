import { redirect } from '@sveltejs/kit';
import { isWinterId } from '#lib/model/calendar.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { getSite } from '#lib/server/services/sites.ts';
import { changeSiteWinter, getSiteWinter } from '#lib/server/services/winters.ts';
import { mergeShown } from '#lib/ui/forms/merge-shown.ts';
import { dateValues, readEvent, readWinterDates, type Dates } from '#lib/ui/forms/winter-input.ts';
import { withSite } from '#lib/ui/site-link.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';
import { forgetWinter, restoreWinter } from './forget-winter.ts';
import { openWinter, storeWinter } from './store-winter.ts';
import { wintersToOffer } from './winters-to-offer.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => {
	const asked = url.searchParams.get('winter') ?? '';
	const view = await found(
		lakeView(locals.context, params.lake, {
			site: siteOf(url),
			...(isWinterId(asked) ? { winter: asked } : {})
		})
	);
	const { lake, site, today, winter, weather } = view;
	const { kind, parent } = await getSite(locals.context, lake.id, site);
	return {
		lake,
		winter,
		/** As people recorded it of the site itself. */
		record: await getSiteWinter(locals.context, lake.id, site, winter),
		/** The site that a track was made on, and when that froze over. */
		parent: kind === 'track' ? parent : null,
		frozeOver: view.record.freezeUpOn,
		winters: wintersToOffer(view.winters, today),
		hasWeather: weather.age_d !== null,
		isMade: url.searchParams.has('made'),
		isStored: url.searchParams.has('stored'),
		removed: url.searchParams.get('removed'),
		isDeleted: url.searchParams.has('deleted')
	};
};

export const actions: Actions = {
	delete: forgetWinter,
	restore: restoreWinter,
	dates: async ({ params, request, locals, url }) => {
		const { context } = locals;
		const { values, site, winter } = await openWinter(context, params.lake, url, request);
		const of = { lakeId: params.lake, site, winter, form: 'dates' } as const;
		return storeWinter(context, of, values, (input, stands) => {
			mergeShown(input, () => dateValues(stands));
			const dates = readWinterDates(input, winter);
			if (hasNoDay(dates) && hasNoDay(stands) && input.issues.length === 0)
				input.refuse('freezeUpOn', 'Type the day it froze over, or the first it may have been.');
			return { ...stands, ...dates };
		});
	},
	addEvent: async ({ params, request, locals, url }) => {
		const { context } = locals;
		const opened = await openWinter(context, params.lake, url, request);
		const { values, site, winter, today } = opened;
		const of = { lakeId: params.lake, site, winter, form: 'event' } as const;
		return storeWinter(context, of, values, (input, stands) => {
			const event = readEvent(input, winter, today);
			return { ...stands, events: event ? [...stands.events, event] : stands.events };
		});
	},
	removeEvent: async ({ params, request, locals, url }) => {
		const { context } = locals;
		const { values, site, winter } = await openWinter(context, params.lake, url, request);
		const event = values['event']?.trim() ?? null;
		const at = ({ events }: SiteWinter) => events.findIndex((one) => JSON.stringify(one) === event);
		const done = await changeSiteWinter(context, params.lake, site, winter, (stands) =>
			at(stands) < 0
				? null
				: { ...stands, events: stands.events.filter((_, index) => index !== at(stands)) }
		);
		const removed = done === null ? '' : `&removed=${encodeURIComponent(event ?? '')}`;
		redirect(303, withSite(`?winter=${winter}${removed}#events`, site));
	},
	restoreEvent: async ({ params, request, locals, url }) => {
		const { context } = locals;
		const { values, site, winter } = await openWinter(context, params.lake, url, request);
		const of = { lakeId: params.lake, site, winter, form: 'event' } as const;
		return storeWinter(context, of, values, (input, stands) => ({
			...stands,
			events: [...stands.events, parsed(input.text('event'))]
		}));
	}
};

/** Then there is nothing to store; where days are recorded it takes them back. */
function hasNoDay({ freezeUpOn, freezeUpBy, iceOutOn }: Dates): boolean {
	return freezeUpOn === null && freezeUpBy === null && iceOutOn === null;
}

/** Whatever comes out, the schema of the winter checks it. */
function parsed(text: string | null): unknown {
	try {
		return JSON.parse(text ?? '');
	} catch {
		return null;
	}
}
