const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE'];

interface Page {
	actions?: Record<string, unknown>;
}

const servers = import.meta.glob<Record<string, unknown>>('/src/routes/**/+server.ts', {
	eager: true
});
const pageServers = import.meta.glob<Page>('/src/routes/**/+page.server.ts', { eager: true });
const pages = Object.keys(import.meta.glob('/src/routes/**/+page.svelte'));

/** Every call that a route file answers, as `GET /lakes/[lake]` or `?/add /lakes/[lake]/loads`. */
export function allCalls(): string[] {
	return [
		...Object.entries(servers).flatMap(([file, module]) =>
			METHODS.filter((method) => method in module).map((method) => `${method} ${routeOf(file)}`)
		),
		...pages.map((file) => `GET ${routeOf(file)}`),
		...Object.entries(pageServers).flatMap(([file, { actions = {} }]) =>
			Object.keys(actions).map((name) => `?/${name} ${routeOf(file)}`)
		)
	].toSorted();
}

/** Folders that answer both as a page and as an endpoint: who may do what would be two questions. */
export function doubleRoutes(): string[] {
	const asPages = new Set(pages.map(routeOf));
	return Object.keys(servers)
		.map(routeOf)
		.filter((route) => asPages.has(route));
}

function routeOf(file: string): string {
	return file.replace(/^\/src\/routes/, '').replace(/\/\+[\w.]+$/, '') || '/';
}
