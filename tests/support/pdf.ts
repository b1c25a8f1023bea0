import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPdf {
	pages: number;
	text: string;
	/** Height of the smallest letters, in points as they are printed. */
	smallest_pt: number;
	/** Width and height of the first page, in points. */
	size_pt: [width: number, height: number];
}

/** What a PDF says, and how small. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
	const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
	const document = await task.promise;
	const words: string[] = [];
	let smallest_pt = Infinity;
	for (let number = 1; number <= document.numPages; number++) {
		const { items } = await (await document.getPage(number)).getTextContent();
		for (const item of items) {
			if (!('str' in item) || item.str.trim() === '') continue;
			words.push(item.str);
			smallest_pt = Math.min(smallest_pt, Math.hypot(item.transform[2], item.transform[3]));
		}
	}
	const [, , width = 0, height = 0] = (await document.getPage(1)).view;
	const pages = document.numPages;
	await task.destroy();
	return {
		pages,
		text: words.join(' ').replace(/\s+/g, ' '),
		smallest_pt,
		size_pt: [width, height]
	};
}
