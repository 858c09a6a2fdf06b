import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

setFlagsFromString('--expose-gc');

/** Frees what nothing holds on to, so that memory can be measured. */
export const collect = runInNewContext('gc') as () => void;
