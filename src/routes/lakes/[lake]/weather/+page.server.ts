import { fail } from '@sveltejs/kit';
import { columnChoices } from '#lib/server/services/column-choices.ts';
import { importWeather } from '#lib/server/services/import-weather.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { countEarlierWinters } from '#lib/server/services/refresh/refresh-lake.ts';
import { storedWeather } from '#lib/server/services/stored-weather.ts';
import { formValues } from '#lib/ui/forms/form-input.ts';
import { found } from '../found.ts';
import { upkeepOf } from '../upkeep.ts';
import { lookAt } from './look-at.ts';
import { originActions } from './origin-actions.ts';
import { originsOf } from './origins-of.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ params, locals, url }) => {
	const view = await found(lakeView(locals.context, params.lake));
	const { lake, record, winter } = view;
	const { searchParams: asked } = url;
	const removed = asked.get('removed');
	return {
		lake,
		winter,
		upkeep: upkeepOf(view),
		...(await originsOf(locals.context, lake)),
		done: asked.get('done'),
		added: asked.get('stored'),
		removed:
			removed === null
				? null
				: {
						source: removed,
						at: asked.get('at') ?? '0',
						station: asked.get('station') ?? '',
						corrects: asked.get('corrects') ?? 'yes'
					},
		earlierWinters: await found(countEarlierWinters(locals.context, params.lake)),
		hasFreezeUp: record.freezeUpOn !== null,
		stored: await found(storedWeather(locals.context, params.lake)),
		choices: columnChoices()
	};
};

/** A decade of hours has 5 MB; a file of this size goes through the API, which reads it as it comes. */
const LARGEST_BYTES = 64_000_000;

export const actions: Actions = {
	...originActions,
	/** Says what a file is taken for; stores nothing. With script only its first 64 kB come here. */
	look: async ({ params, request, locals }) => {
		const form = await request.formData();
		const file = form.get('file');
		const refusal = refuse(file);
		if (refusal || !(file instanceof File)) return fail(400, { refusal });
		return { looked: await found(lookAt(locals.context, params.lake, file, formValues(form))) };
	},
	/** Without script: the whole file in a form. */
	import: async ({ params, request, locals }) => {
		const form = await request.formData();
		const file = form.get('file');
		const refusal = refuse(file);
		if (refusal || !(file instanceof File)) return fail(400, { refusal });
		const looked = await found(lookAt(locals.context, params.lake, file, formValues(form)));
		if (!looked.preview.ok) return fail(400, { looked });
		const options = looked.corrections.length > 0 ? { columns: looked.corrections } : {};
		const report = await found(importWeather(locals.context, params.lake, file.stream(), options));
		return report.status === 'refused' ? fail(400, { report }) : { report };
	}
};

function refuse(file: FormDataEntryValue | null): string | null {
	if (!(file instanceof File) || file.name === '') return 'Choose a CSV file first.';
	if (file.size === 0) return `${file.name} is empty. Choose the file with the measurements.`;
	if (file.size <= LARGEST_BYTES) return null;
	return `${file.name} has more than 64 MB. Split it by years, or send it to the API.`;
}
