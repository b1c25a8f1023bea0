import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import type { LayoutServerLoad } from './$types';

export const load: LayoutServerLoad = ({ cookies, locals }) => ({
	viewer: { role: locals.viewer.role, way: locals.viewer.way },
	units: parseUnits(cookies.get(UNITS_COOKIE))
});
