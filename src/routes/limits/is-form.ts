const FORMS = ['application/x-www-form-urlencoded', 'multipart/form-data'];

/** As a page sends it; a program sends JSON, or a file as it is. */
export function isForm(headers: Headers): boolean {
	const type = headers.get('content-type')?.split(';', 1)[0]?.trim().toLowerCase() ?? '';
	return FORMS.includes(type);
}
