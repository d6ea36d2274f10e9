/** The states of a machine in layers: each below every state that leads to it, circles left aside. */

interface Step {
  readonly from: string;
  readonly to: string;
}

/** Layers from the start down, each in the order of its predecessors; what no step reaches comes last. */
export function layersOf(start: string, ids: readonly string[], steps: readonly Step[]): string[][] {
  const onward = withoutCircles(start, ids, steps);
  const reached = reachedFrom(start, onward);
  const forward = onward.filter(({ from }) => reached.has(from));
  const depth = new Map<string, number>();
  const depthOf = (id: string): number => {
    const known = depth.get(id);
    if (known !== undefined) return known;
    const above = forward.filter(({ to }) => to === id).map(({ from }) => depthOf(from) + 1);
    const mine = Math.max(0, ...above);
    depth.set(id, mine);
    return mine;
  };
  const inWay = ids.filter((id) => reached.has(id));
  const count = Math.max(-1, ...inWay.map(depthOf)) + 1;
  const layers = Array.from({ length: count }, (_, layer) => inWay.filter((id) => depthOf(id) === layer));
  const rest = ids.filter((id) => !reached.has(id));
  if (rest.length > 0) layers.push(rest);
  return layers.map((layer, index) => byPredecessor(layer, layers[index - 1] ?? [], forward));
}

/** The steps that lead on; a step back to a state on the way to it closes a circle and is left out. */
function withoutCircles(start: string, ids: readonly string[], steps: readonly Step[]): Step[] {
  const kept: Step[] = [];
  const onWay = new Set<string>();
  const done = new Set<string>();
  const visit = (id: string): void => {
    onWay.add(id);
    for (const step of steps) {
      if (step.from !== id || onWay.has(step.to)) continue;
      kept.push(step);
      if (!done.has(step.to)) visit(step.to);
    }
    onWay.delete(id);
    done.add(id);
  };
  for (const id of [start, ...ids]) if (!done.has(id)) visit(id);
  return kept;
}

function reachedFrom(start: string, steps: readonly Step[]): Set<string> {
  const reached = new Set([start]);
  for (const id of reached) for (const step of steps) if (step.from === id) reached.add(step.to);
  return reached;
}

/** Under its first predecessor; the order of the file decides between equals. */
function byPredecessor(layer: readonly string[], above: readonly string[], steps: readonly Step[]): string[] {
  const rank = (id: string): number => {
    const columns = steps.filter(({ to }) => to === id).map(({ from }) => above.indexOf(from));
    const found = columns.filter((column) => column >= 0);
    return found.length > 0 ? Math.min(...found) : above.length;
  };
  return [...layer].sort((a, b) => rank(a) - rank(b));
}
