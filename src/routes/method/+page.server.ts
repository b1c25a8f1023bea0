import charts from '../../../data/charts/minimums.json';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({
	minimums: charts.minimums,
	published: charts.published
});
