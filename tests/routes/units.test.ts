import { isRedirect } from '@sveltejs/kit';
import { expect, test } from 'vitest';
import { POST } from '../../src/routes/units/+server.ts';

interface Kept {
	name: string;
	value: string;
	options: Record<string, unknown>;
}

async function post(fields: Record<string, string>, kept = '', address = 'http://localhost/units') {
	const body = new FormData();
	for (const [name, value] of Object.entries(fields)) body.set(name, value);
	const cookies: Kept[] = [];
	const event = {
		url: new URL(address),
		request: new Request(address, { method: 'POST', body }),
		cookies: {
			get: () => kept,
			set: (name: string, value: string, options: Record<string, unknown>) =>
				cookies.push({ name, value, options })
		}
	};
	try {
		await POST(event as never);
	} catch (thrown) {
		if (!isRedirect(thrown)) throw thrown;
		return { status: thrown.status, location: thrown.location, cookies };
	}
	throw new Error('no redirect');
}

test('a unit is kept for a year, and leads back to the page and its view', async () => {
	const back = '/lakes/a?winter=2026-27&asOf=2027-01-02';
	const { status, location, cookies } = await post({ measure: 'imperial', back });
	expect({ status, location }).toEqual({ status: 303, location: back });
	expect(cookies).toHaveLength(1);
	expect(JSON.parse(cookies[0]?.value ?? '')).toEqual({ measure: 'imperial', mass: 'kg' });
	expect(cookies[0]?.options).toMatchObject({ path: '/', maxAge: 31_536_000, sameSite: 'lax' });
});

test('the other unit stays as it was', async () => {
	const { cookies } = await post({ mass: 'lb' }, '{"measure":"imperial","mass":"kg"}');
	expect(JSON.parse(cookies[0]?.value ?? '')).toEqual({ measure: 'imperial', mass: 'lb' });
});

test('the cookie is marked secure on https only', async () => {
	const plain = await post({ mass: 'lb' }, '', 'http://192.0.2.7:3000/units');
	const secure = await post({ mass: 'lb' }, '', 'https://ice.example/units');
	expect(plain.cookies[0]?.options['secure']).toBe(false);
	expect(secure.cookies[0]?.options['secure']).toBe(true);
});

test.each(['https://elsewhere.example/', '//elsewhere.example', '/\\elsewhere.example', 'x', ''])(
	'it never leads away from this site: %j',
	async (back) => {
		expect((await post({ mass: 'lb', back })).location).toBe('/');
	}
);

test('a unit that does not exist changes nothing', async () => {
	const { cookies } = await post({ measure: 'furlong', mass: 'stone' });
	expect(JSON.parse(cookies[0]?.value ?? '')).toEqual({ measure: 'metric', mass: 'kg' });
});
