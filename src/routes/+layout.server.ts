import { parseUnits, UNITS_COOKIE } from '#lib/ui/units-setting.ts';
import type { LayoutServerLoad } from './$types';

export const load: LayoutServerLoad = ({ cookies }) => ({
	units: parseUnits(cookies.get(UNITS_COOKIE))
});
