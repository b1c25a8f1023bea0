/** Who asks, and where the operator can be reached. */
export function userAgent(contact: string | null): string {
	const reach = (contact ?? '')
		.replace(/[^\x20-\x7e]|[()\\]/g, '')
		.trim()
		.slice(0, 120);
	return reach === '' ? APP : `${APP} (${reach})`;
}

const APP = 'Frostledger/0.1';
