/** As long as a name may be: longer ones fit no line. */
export const LONGEST_NAME = 80;

/** As long as a text of ours may be, a note or a reason: in bytes, as a log has it. */
export const LONGEST_TEXT = 4096;

/** As long as the notes of a job may be. */
export const LONGEST_NOTES = 4000;

/**
 * What a text that came from elsewhere must not do to whoever reads it: control characters act on a terminal (ECMA-48: C0, delete, C1), a line's end
 * begins a line that we never wrote, and bidirectional controls put a line in another order (Unicode Standard Annex 9). A half of a surrogate pair is
 * no character.
 */
export const ACTING = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/u;

/** Whether a job, a bender, a die or a check may be called so: visible characters on one line. */
export const nameWillDo = (name: string): boolean =>
	name.trim() !== '' && !ACTING.test(name) && [...name].length <= LONGEST_NAME;

/** Whether a job may have these notes: they may have lines. */
export const notesWillDo = (notes: string): boolean =>
	!ACTING.test(notes.replace(/\r\n|[\n\t]/g, ' ')) && [...notes].length <= LONGEST_NOTES;
