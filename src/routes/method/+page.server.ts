import references from '#lib/model/references.md?raw';
import charts from '../../../data/charts/minimums.json';
import { referencesIn } from './references.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({
	minimums: charts.minimums,
	published: charts.published,
	references: referencesIn(references)
});
