/** Circles among things that name one another: profiles by sameAs, sources by restsOn. */

/** Each id and the ids it names; ids that are named but have no entry here name nothing. */
export type Naming = ReadonlyMap<string, readonly string[]>;

/**
 * One circle for each group of ids that lead back to one another: the shortest from the id that comes first,
 * each id naming the next and the last naming the first. An id that names itself is a circle of its own.
 * Takes time in proportion to the ids and namings.
 */
export function circlesOf(naming: Naming): string[][] {
  const groups = circleGroups(naming);
  const done = new Set<number>();
  const circles: string[][] = [];
  for (const [id, named] of naming) {
    if (named.includes(id)) circles.push([id]);
    const group = groups.get(id);
    if (group === undefined || done.has(group)) continue;
    done.add(group);
    circles.push(shortestBack(id, naming, groups, group));
  }
  return circles;
}

/**
 * The ids that lead back to themselves over others, with a number for each group of those that lead back to
 * one another: the strongly connected components of more than one id (R. Tarjan 1972, without recursion so
 * that a long chain cannot exhaust the stack).
 */
export function circleGroups(naming: Naming): ReadonlyMap<string, number> {
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const isOpen = new Set<string>();
  const groups = new Map<string, number>();
  let groupCount = 0;
  const low = (id: string): number => lowest.get(id) ?? 0;

  for (const start of naming.keys()) {
    if (order.has(start)) continue;
    const path: { readonly id: string; next: number }[] = [];
    const enter = (id: string): void => {
      order.set(id, order.size);
      lowest.set(id, order.size - 1);
      open.push(id);
      isOpen.add(id);
      path.push({ id, next: 0 });
    };
    enter(start);
    for (let here = path.at(-1); here; here = path.at(-1)) {
      const { id } = here;
      const named = naming.get(id)?.[here.next];
      here.next += 1;
      if (named !== undefined) {
        if (!order.has(named)) enter(named);
        else if (isOpen.has(named)) lowest.set(id, Math.min(low(id), order.get(named) ?? 0));
        continue;
      }
      path.pop();
      const parent = path.at(-1);
      if (parent) lowest.set(parent.id, Math.min(low(parent.id), low(id)));
      if (low(id) !== order.get(id)) continue;
      const members = open.splice(open.lastIndexOf(id));
      for (const member of members) isOpen.delete(member);
      if (members.length < 2) continue;
      for (const member of members) groups.set(member, groupCount);
      groupCount += 1;
    }
  }
  return groups;
}

/** The shortest way inside a group from an id back to itself. */
function shortestBack(
  start: string,
  naming: Naming,
  groups: ReadonlyMap<string, number>,
  group: number,
): string[] {
  const cameBy = new Map<string, string | undefined>([[start, undefined]]);
  for (const id of cameBy.keys()) {
    for (const named of naming.get(id) ?? []) {
      if (named === start && id !== start) {
        const circle: string[] = [];
        for (let at: string | undefined = id; at !== undefined; at = cameBy.get(at)) circle.unshift(at);
        return circle;
      }
      if (groups.get(named) === group && !cameBy.has(named)) cameBy.set(named, id);
    }
  }
  return [start];
}
