type Module = Record<string, unknown>;

const endpoints = import.meta.glob<Module>('/src/routes/**/+server.ts', { eager: true });
const pages = import.meta.glob<Module>('/src/routes/**/+page.server.ts', { eager: true });

/** A call that may change something. */
export interface ChangingCall {
	method: string;
	/** With the invented lake and made-up ids in the place of parameters. */
	address: string;
	/** As Kit names it. */
	route: string;
}

const METHODS = ['POST', 'PUT', 'PATCH', 'DELETE'];

/** Every method but reading of every address, those that the address does not have included. */
export const changingCalls: ChangingCall[] = [
	...Object.keys(endpoints).flatMap((file) => {
		const route = routeOf(file, '/+server.ts');
		return METHODS.map((method) => ({ method, address: addressOf(route), route }));
	}),
	...Object.entries(pages).flatMap(([file, module]) => {
		const route = routeOf(file, '/+page.server.ts');
		return Object.keys((module['actions'] as object | undefined) ?? {}).map((action) => ({
			method: 'POST',
			address: `${addressOf(route)}${action === 'default' ? '' : `?/${action}`}`,
			route
		}));
	})
];

function routeOf(file: string, end: string): string {
	return file.replace('/src/routes', '').replace(end, '') || '/';
}

function addressOf(route: string): string {
	return route
		.replace('[...rest]', 'nothing')
		.replace('[lake]', 'pinder-lake')
		.replace('[winter]', '2025-26')
		.replace('[site]', 'main')
		.replace(/\[\w+\]/g, 'made-up');
}
