import { build, files, version } from '$service-worker';
import { BUILD_CACHE, BUILD_SUMMARY, FACTS } from '#lib/ui/offline/names.ts';
import { packed, unpacked } from './packing.ts';

const BUILD = `${BUILD_CACHE}${version}`;

/** At a time: a phone's connection is also wanted by the page. */
const AT_ONCE = 4;
/** Pictures of a home screen, which no page shows. */
const UNSHOWN = /^\/icons\//;
/** Workers are in no list of the build: the script that starts one names it. */
const WORKER = /workers\/[\w.-]+\.js/g;

export function isBuildFile({ pathname }: URL): boolean {
	return pathname.startsWith('/_app/immutable/') || files.includes(pathname);
}

/** Keeps all that pages are built of. */
export async function keepBuild(): Promise<void> {
	const cache = await caches.open(BUILD);
	const open = [...build, ...files.filter((file) => !UNSHOWN.test(file))];
	const named = new Set(open);
	let bytes = 0;
	const work = async () => {
		for (let path = open.pop(); path !== undefined; path = open.pop()) {
			const response = await fetch(path);
			if (!response.ok) throw new Error(`${path} was answered with status ${response.status}`);
			if (path.endsWith('.js')) {
				for (const [worker] of (await response.clone().text()).matchAll(WORKER)) {
					const at = `/_app/immutable/${worker}`;
					if (!named.has(at)) open.push(at);
					named.add(at);
				}
			}
			const kept = await packed(response, { [FACTS.build]: version });
			bytes += Number(kept.headers.get(FACTS.bytes));
			await cache.put(path, kept);
		}
	};
	await Promise.all(Array.from({ length: AT_ONCE }, work));
	await cache.put(BUILD_SUMMARY, Response.json({ files: named.size, bytes }));
}

/** A file of this build or of one before it, whose pages may still be kept. */
export async function buildFile(request: Request): Promise<Response> {
	const kept = await caches.match(request.url, { ignoreVary: true, ignoreSearch: true });
	return kept ? unpacked(kept) : fetch(request);
}

/** Lets go of builds that no kept page was made by. */
export async function forgetBuilds(inUse: ReadonlySet<string>): Promise<void> {
	for (const name of await caches.keys()) {
		if (!name.startsWith(BUILD_CACHE) || name === BUILD) continue;
		if (!inUse.has(name.slice(BUILD_CACHE.length))) await caches.delete(name);
	}
}
