/**
 * The pieces that the build comes in: what the start screen needs, what any job needs, and the rest. Left to itself, the
 * bundler makes a piece for each set of screens that share something, and each lists what it takes from all the others.
 *
 * The words of each are a piece beside it, and so is what draws the screens of a job: packed, prose is smaller among prose,
 * elements among elements, and code among code.
 */

/** What the bundler tells of its modules. */
export interface Modules {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

/** The name of a piece, and the module that all of it is imported by, directly or not; the first that has a module keeps it. */
const PIECES = [
  ['start', 'src/ui/main.tsx'],
  ['job-screens', 'src/ui/job-screens.ts'],
] as const;

/** What draws, and what lists it: nothing else imports it, so that these pieces do not import one another in a circle. */
const isView = (id: string): boolean => /\.tsx$|\/job-screens\.ts$/.test(id);

/** @param root the folder of the project, with forward slashes */
export function piecesOf(root: string): (id: string, modules: Modules) => string | null {
  const places = new Map<string, string>();
  return (id, modules) => {
    if (places.size === 0) for (const [name, file] of PIECES) collect(`${root}/${file}`, name, modules);
    const place = places.get(id);
    if (place === undefined) return null;
    if (id.startsWith(`${root}/src/words/`)) return `${place}-words`;
    return place === 'job-screens' && isView(id) ? `${place}-views` : place;
  };

  function collect(id: string, name: string, modules: Modules): void {
    if (places.has(id)) return;
    places.set(id, name);
    for (const imported of modules.getModuleInfo(id)?.importedIds ?? []) collect(imported, name, modules);
  }
}
