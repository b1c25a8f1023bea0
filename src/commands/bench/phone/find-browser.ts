import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';

const INSTALLED = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'].flatMap(
	(name) => [`/usr/bin/${name}`, `/usr/local/bin/${name}`, `/snap/bin/${name}`]
);

const MANIFEST = 'node_modules/@sparticuz/chromium/package.json';

/** The browser to drive, and what its process needs to find its own libraries and fonts. */
export interface FoundBrowser {
	/** `null` where this machine has none. */
	path: string | null;
	environment: Record<string, string>;
}

/** The browser that comes with the packages, unpacked; else one that is installed. */
export async function findBrowser(): Promise<FoundBrowser> {
	const path = (await bundledBrowser()) ?? INSTALLED.find((each) => existsSync(each)) ?? null;
	return { path, environment: pick(['LD_LIBRARY_PATH', 'FONTCONFIG_PATH', 'HOME']) };
}

/**
 * Unpacks into a folder named after the version, because the package returns a path it finds
 * before a parallel unpack has finished, and would keep an old version for ever.
 */
async function bundledBrowser(): Promise<string | null> {
	if (process.platform !== 'linux' || process.arch !== 'x64' || !hasGlibc()) return null;
	// It is for development only, and not there where the app is only run.
	if (!existsSync(MANIFEST)) return null;
	const { version } = JSON.parse(readFileSync(MANIFEST, 'utf8')) as { version: string };
	const folder = resolve('node_modules/.cache', `chromium-${version}`);
	mkdirSync(folder, { recursive: true });
	const before = process.env.TMPDIR;
	process.env.TMPDIR = folder;
	// Without it the package expects the system's NSS libraries.
	process.env.AWS_LAMBDA_JS_RUNTIME = 'nodejs22.x';
	const { default: chromium } = await import('@sparticuz/chromium');
	const path = await chromium.executablePath();
	process.env.FONTCONFIG_PATH = fontFolder(folder);
	if (before === undefined) delete process.env.TMPDIR;
	else process.env.TMPDIR = before;
	return path;
}

/** The package's own list of fonts names folders of other machines, and without any the browser dies. */
function fontFolder(folder: string): string {
	const path = resolve(folder, 'font-list');
	mkdirSync(path, { recursive: true });
	writeFileSync(
		resolve(path, 'fonts.conf'),
		`<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
	<dir>${resolve(folder, 'fonts')}</dir>
	<cachedir>${resolve(path, 'cache')}</cachedir>
</fontconfig>
`
	);
	return path;
}

function pick(names: string[]): Record<string, string> {
	return Object.fromEntries(names.flatMap((name) => [[name, process.env[name] ?? '']]));
}

function hasGlibc(): boolean {
	const report = process.report.getReport() as { header?: { glibcVersionRuntime?: string } };
	return Boolean(report.header?.glibcVersionRuntime);
}
