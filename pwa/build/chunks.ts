import { textsIn } from "./texts.ts";

/** A file of `src/screens/places`: what is fetched after the bench. */
const PLACE = /\/screens\/places\/\w+\.tsx$/;

/** What reads codes off a picture. */
const READER = /\/platform\/codeReader\.ts$/;

interface Graph {
  getModuleInfo: (id: string) => { isEntry: boolean; importers: readonly string[] } | null;
}

/** Which files the page is built into: what the bench needs is one, every place is one, and what several places share, so that
 * few are fetched. By their names (`place-`, `text-`) the service worker and `compress.mjs` tell what a first visit waits for. */
export const CHUNKS = {
  chunkFileNames: ({ facadeModuleId, name }: { facadeModuleId: string | null; name: string }) => `assets/${kindOf(facadeModuleId)}${name}-[hash].js`,
  codeSplitting: {
    groups: [
      { name: (id: string, graph: Graph) => (isFirst(id, graph, new Set()) ? "app" : null), priority: 2 },
      { name: "place-shared", minShareCount: 2, priority: 1 },
    ],
  },
};

function kindOf(facade: string | null): string {
  if (!facade) return "";
  if (READER.test(facade)) return "scan-";
  const texts = textsIn(facade);
  return `${texts?.ofPlaces || PLACE.test(facade) ? "place-" : ""}${texts ? "text-" : ""}`;
}

/** Whether the page imports a module as it starts, and not only when something of it is asked for. */
function isFirst(id: string, graph: Graph, seen: Set<string>): boolean {
  if (seen.has(id)) return false;
  seen.add(id);
  const found = graph.getModuleInfo(id);
  return found !== null && (found.isEntry || found.importers.some((one) => isFirst(one, graph, seen)));
}
