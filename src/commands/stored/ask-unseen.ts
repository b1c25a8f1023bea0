import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';

/** Asks for a line that a terminal must not show; from a pipe the first line is taken. */
export async function askUnseen(question: string): Promise<string> {
	const isTerminal = process.stdin.isTTY === true;
	if (isTerminal) process.stderr.write(question);
	const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() });
	const lines = createInterface({ input: process.stdin, output: nowhere, terminal: isTerminal });
	// At the end of its input it closes without an answer.
	const ended = new Promise<string>((done) => lines.once('close', () => done('')));
	try {
		return await Promise.race([lines.question(''), ended]);
	} finally {
		lines.close();
		if (isTerminal) process.stderr.write('\n');
	}
}
