/**
 * Who at least may do something: `open` asks for nobody and looks at nobody, `anybody` knows who it is
 * if it can, `guestWithPlaces` is a guest whose link shows exact places.
 */
export type Least = 'open' | 'anybody' | 'guest' | 'guestWithPlaces' | 'helper' | 'owner';

/** An HTTP method, or a form action as `?/name`; `?/default` is the one without a name. */
export type Call = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE' | `?/${string}`;

export type Rules = Readonly<Record<string, Partial<Readonly<Record<Call, Least>>>>>;
