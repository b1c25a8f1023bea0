import { redirect } from '@sveltejs/kit';
import { parseUnits, UNITS_COOKIE, withUnits } from '#lib/ui/units-setting.ts';
import { ownPath } from '../access/own-path.ts';
import type { RequestHandler } from './$types';

const YEAR_S = 365 * 24 * 60 * 60;

/** Keeps the wished units and goes back to the page the form was on. */
export const POST: RequestHandler = async ({ request, cookies, url }) => {
	const form = await request.formData();
	const units = withUnits(parseUnits(cookies.get(UNITS_COOKIE)), Object.fromEntries(form));
	cookies.set(UNITS_COOKIE, JSON.stringify(units), {
		path: '/',
		maxAge: YEAR_S,
		sameSite: 'lax',
		// Kit would mark it so on plain http too, unless the host is localhost.
		secure: url.protocol === 'https:'
	});
	redirect(303, ownPath(form.get('back'), url));
};
