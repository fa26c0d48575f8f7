/** Licences under which another's work may be in the book itself: they ask for no more than their notice. */
export const carried: ReadonlySet<string> = new Set(['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'BlueOak-1.0.0']);

/** Licences under which a tool may help to make or test the book, none of it going into what is built. */
export const ofTools: ReadonlySet<string> = new Set([...carried, 'CC0-1.0', 'Python-2.0', 'MPL-2.0', 'LGPL-3.0-or-later']);
