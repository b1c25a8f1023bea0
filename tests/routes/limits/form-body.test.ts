import type { RequestEvent } from '@sveltejs/kit';
import { isHttpError } from '@sveltejs/kit';
import { expect, test } from 'vitest';
import { refuseLongForm, withReadableForm } from '../../../src/routes/limits/form-body.ts';

const FORM = 'application/x-www-form-urlencoded';
const url = new URL('http://localhost/x');

function refused(length: string | null, { type = FORM, route = '/x' } = {}) {
	const headers = {
		'content-type': type,
		...(length === null ? {} : { 'content-length': length })
	};
	const request = new Request(url, { method: 'POST', body: 'a=b', headers });
	const event = { url, request, route: { id: route } } as unknown as RequestEvent;
	return refuseLongForm(event)?.status ?? null;
}

test('a form longer than its page takes is not read', () => {
	expect(refused('1000000')).toBeNull();
	expect(refused('1000001')).toBe(413);
	expect(refused('1000001', { type: 'Multipart/Form-Data; boundary=x' })).toBe(413);
	expect(refused('60000000', { route: '/lakes/[lake]/weather' })).toBeNull();
	expect(refused('70000000', { route: '/lakes/[lake]/weather' })).toBe(413);
});

test('a form that does not say how long it is, is not read', () => {
	expect(refused(null)).toBe(411);
	expect(refused('-1')).toBe(411);
	expect(refused('1e3')).toBe(411);
});

test('what is no form is left to its handler', () => {
	for (const type of ['text/csv', 'application/json', 'application/zip', 'text/plain']) {
		expect(refused('200000000', { type })).toBeNull();
	}
});

test.each([
	['another type', 'application/json', '{}'],
	['no boundary', 'multipart/form-data', 'x'],
	['a boundary that is not there', 'multipart/form-data; boundary=b', 'x'],
	['a part cut short', 'multipart/form-data; boundary=b', '--b\r\nContent-Disposition: form-']
])('a body that is no form (%s) is told as that', async (_, type, body) => {
	const request = new Request(url, { method: 'POST', body, headers: { 'content-type': type } });
	const failed = await withReadableForm(request)
		.formData()
		.catch((cause: unknown) => cause);
	expect(isHttpError(failed, 400)).toBe(true);
});

test('a form is read as it is', async () => {
	const body = new URLSearchParams({ name: 'Pond' });
	const form = await withReadableForm(new Request(url, { method: 'POST', body })).formData();
	expect(form.get('name')).toBe('Pond');
});
