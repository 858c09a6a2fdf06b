import manifest from '../../package.json' with { type: 'json' };

/** The program's version, from package.json when the bundle is built. */
export const VERSION: string = manifest.version;
