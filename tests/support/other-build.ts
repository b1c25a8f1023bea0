import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export interface OtherBuild {
	folder: string;
	remove(): void;
}

/** The app as it is built, with a service worker of another version: what a new release is to a device. */
export function otherBuild(): OtherBuild {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-build-'));
	cpSync('build', join(folder, 'build'), { recursive: true });
	for (const name of ['node_modules', 'data', 'package.json'])
		symlinkSync(resolve(name), join(folder, name));
	const script = join(folder, 'build/client/service-worker.js');
	const { version } = JSON.parse(
		readFileSync(join(folder, 'build/client/_app/version.json'), 'utf8')
	) as { version: string };
	const text = readFileSync(script, 'utf8');
	if (!text.includes(version)) throw new Error('the service worker does not name its version');
	writeFileSync(script, text.replaceAll(version, `${version}9`));
	// As they were packed beforehand, they are those of the other.
	for (const packed of ['.br', '.gz']) rmSync(script + packed, { force: true });
	return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
