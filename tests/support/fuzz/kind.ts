import type fc from 'fast-check';

/** One try: what was sent, and what came of it. */
export interface Outcome {
	/** The status of the answer; 200 where there is none and nothing was thrown. */
	status: number;
	/** For a fault: what was told. */
	text: string;
}

/** Something of the app that takes what strangers write. */
export interface Kind<Input = unknown> {
	inputs: fc.Arbitrary<Input>;
	/** Everything that a try needs; made anew every so often, as tries leave things behind. */
	open(): Promise<Opened<Input>>;
}

export interface Opened<Input> {
	/** A fault is thrown, or answered with 500 or more. */
	take(input: Input): Promise<Outcome>;
	close(): Promise<void>;
}

/** Keeps the types of a kind together. */
export function kind<Input>(made: Kind<Input>): Kind {
	return made as unknown as Kind;
}
