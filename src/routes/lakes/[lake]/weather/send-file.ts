import type { ImportReport } from '#lib/server/services/import-weather.ts';

export interface Progress {
	/** 0 to 1 of the file has left this device. */
	sentFraction: number;
	/** Rows that the server has read. */
	rows: number;
	/** 0 to 1 of the file has been read there; then it is stored. */
	readFraction: number;
}

type Line = { rows: number; bytes: number } | { report: ImportReport } | { failed: string };

/** Posts a file and tells how far it is: `fetch` can't tell how much has been sent. */
export function sendFile(
	url: string,
	file: File,
	tell: (progress: Progress) => void
): Promise<ImportReport> {
	return new Promise((resolve, reject) => {
		const request = new XMLHttpRequest();
		const lost =
			'The connection broke before the file was stored. Nothing of it is kept; press Import again.';
		request.upload.addEventListener('progress', ({ loaded, total }) => {
			tell({ sentFraction: total > 0 ? loaded / total : 0, rows: 0, readFraction: 0 });
		});
		request.addEventListener('progress', () => {
			const line = readLines(request.responseText).findLast((line) => 'rows' in line);
			if (line) tell({ sentFraction: 1, rows: line.rows, readFraction: line.bytes / file.size });
		});
		request.addEventListener('error', () => reject(new Error(lost)));
		request.addEventListener('load', () => {
			const last = readLines(request.responseText).at(-1);
			if (last && 'report' in last) resolve(last.report);
			else reject(new Error(last && 'failed' in last ? last.failed : refusal(request) || lost));
		});
		request.open('POST', url);
		request.setRequestHeader('content-type', 'text/csv');
		request.send(file);
	});
}

/** All complete lines of an answer that is still coming. */
export function readLines(text: string): Line[] {
	return text
		.split('\n')
		.slice(0, -1)
		.flatMap((line) => {
			try {
				return [JSON.parse(line)];
			} catch {
				return [];
			}
		});
}

function refusal({ status, responseText }: XMLHttpRequest): string {
	if (status === 413) return 'The file is larger than this server takes. Split it by years.';
	try {
		const { message, detail } = JSON.parse(responseText);
		return String(message ?? detail ?? '');
	} catch {
		return '';
	}
}
