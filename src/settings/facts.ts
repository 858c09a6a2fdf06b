/** What there is to say of the settings and their file; `words` makes the sentences. */
import type { Cause } from '../session/protocol/facts/not-saved.ts';
import type { FieldName } from '../tube/tooling-fields.ts';
import type { Quantity } from '../units/parse.ts';
import type { Range } from '../units/range.ts';
import type { Units } from '../units/units.ts';

/** What a kept value may be: a length in `units`. */
export interface FieldRight {
	kind: Quantity;
	range: Range;
	units: Units;
}

/** Why a text holds no settings; `path`: the place in it that is not what can be kept there. */
export type Broken = 'empty' | 'not-json' | 'no-settings' | { path: string };

/** What befell the file: `cause` where it could not be put aside. */
export type FileFault = 'missing' | { why: Broken; aside: string } | { why: Broken; cause: Cause };

/** What the user should know; nothing that keeps a tube from being bent. */
export type SettingsProblem =
	| { code: 'settings-unreadable'; file: string; cause: Cause }
	/** What became of the last good copy. */
	| { code: 'settings-copy'; file: string; fault: FileFault; good: string; copy: 'used' | 'none' | 'broken' | Cause }
	| { code: 'settings-copy-old'; good: string; cause: Cause }
	/** A value that no machine (`die` null) or die can have. */
	| { code: 'settings-value'; bender: string; die: string | null; field: FieldName; value: number; right: FieldRight };

/** Why a change was not kept. */
export type SettingsFault =
	| { code: 'settings-busy'; file: string; lock: string }
	| { code: 'settings-not-written'; file: string; cause: Cause };

/** What cannot be kept at all. */
export type SettingsRefusal =
	| { code: 'settings-no-name'; of: 'bender' | 'die'; name: string }
	| {
			code: 'settings-no-value';
			of: 'bender' | 'die';
			name: string;
			field: FieldName;
			value: number;
			right: FieldRight;
	  };

export type SettingsFact = SettingsProblem | SettingsFault | SettingsRefusal;
