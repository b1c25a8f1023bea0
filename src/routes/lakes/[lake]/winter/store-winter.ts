import { fail, redirect } from '@sveltejs/kit';
import { isWinterId, type WinterId } from '#lib/model/calendar.ts';
import type { SiteEvent, SiteWinter } from '#lib/model/site-winter.ts';
import type { Context } from '#lib/server/context.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { latestOf } from '#lib/server/services/latest.ts';
import { getSite } from '#lib/server/services/sites.ts';
import { changeSiteWinter, winterInputFor } from '#lib/server/services/winters.ts';
import { FormInput, formValues, type FormValues } from '#lib/ui/forms/form-input.ts';
import { withSite } from '#lib/ui/site-link.ts';
import { found } from '../found.ts';
import { siteOf } from '../site-of.ts';

/** What a form of this page works on. */
export async function openWinter(context: Context, lakeId: string, url: URL, request: Request) {
	const asked = url.searchParams.get('winter') ?? '';
	const site = siteOf(url);
	const winter = isWinterId(asked)
		? asked
		: (await found(lakeView(context, lakeId, { site }))).winter;
	await found(getSite(context, lakeId, site));
	const { on: today } = latestOf(context, await getLake(context, lakeId));
	return { values: formValues(await request.formData()), site, winter, today };
}

type Draft = Omit<SiteWinter, 'events'> & { winter: WinterId; events: unknown[] };

interface Stored {
	lakeId: string;
	site: string;
	winter: WinterId;
	form: 'dates' | 'event';
}

/** Stores what `draft` makes of the record that stands, or says at the fields of the form why not. */
export async function storeWinter(
	context: Context,
	{ lakeId, site, winter, form }: Stored,
	values: FormValues,
	draft: (input: FormInput, stands: SiteWinter) => Draft
) {
	let input = new FormInput(values);
	const done = await changeSiteWinter(context, lakeId, site, winter, (stands) => {
		// Anew each time that another has come before it.
		input = new FormInput({ ...values });
		const { winter: _, ...typed } = draft(input, stands);
		const parsed = winterInputFor(winter).safeParse(typed);
		if (!parsed.success && input.issues.length === 0) refuse(input, parsed.error.issues, form);
		if (!parsed.success || input.issues.length > 0) return null;
		return { winter, ...parsed.data, events: parsed.data.events.toSorted(byDay) };
	});
	if (done === null) return fail(400, { form, ...input.refusal });
	const stored = `${form}${form === 'event' ? done.events.length : ''}`;
	redirect(303, withSite(`?winter=${winter}&stored=${stored}`, site));
}

function refuse(
	input: FormInput,
	issues: readonly { path: PropertyKey[]; message: string }[],
	form: 'dates' | 'event'
): void {
	const isOfEvent = issues.some(({ path }) => path[0] === 'events');
	if (form === 'dates' && isOfEvent) {
		const remedy = 'Mend the day, or remove the event first.';
		input.refuse('freezeUpOn', `An event of this winter would lie before freeze-up. ${remedy}`);
	} else {
		input.refuseAll(issues.map(({ path, message }) => ({ path: ownPath(path), message })));
	}
}

/** The form has one event, so `events.3.snow_m` is its `snow`, and the whole event its day. */
function ownPath(path: PropertyKey[]): PropertyKey[] {
	const own = path[0] === 'events' ? path.slice(2) : path;
	return own.length > 0 ? own : ['on'];
}

function byDay(a: SiteEvent, b: SiteEvent): number {
	return a.on < b.on ? -1 : Number(a.on > b.on);
}
