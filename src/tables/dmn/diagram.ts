/** A plain drawing of what needs what, without which some editors show no diagram: decisions above, inputs below. */
import type { DmnModdle, ModdleElement } from 'dmn-moddle';

export interface Drawn {
  readonly decision: ModdleElement;
  readonly requires: readonly { readonly input: ModdleElement; readonly requirement: ModdleElement }[];
}

const width = 160;
const gap = 40;
const decisionBox = { y: 80, height: 80 };
const inputBox = { y: 280, height: 45 };

/** Adds shapes and edges for decisions and the inputs they need. */
export function addDiagram(moddle: DmnModdle, definitions: ModdleElement, drawn: readonly Drawn[]): void {
  const inputs = [...new Set(drawn.flatMap(({ requires }) => requires.map(({ input }) => input)))];
  const left = (index: number): number => gap + index * (width + gap);
  const shape = (element: ModdleElement, index: number, box: typeof decisionBox): ModdleElement =>
    moddle.create('dmndi:DMNShape', {
      id: `shape.${element.id}`,
      dmnElementRef: element,
      bounds: moddle.create('dc:Bounds', { x: left(index), width, ...box }),
    });
  const edges = drawn.flatMap(({ requires }, at) =>
    requires.map(({ input, requirement }) =>
      moddle.create('dmndi:DMNEdge', {
        id: `edge.${requirement.id}`,
        dmnElementRef: requirement,
        waypoint: [
          moddle.create('dc:Point', { x: left(inputs.indexOf(input)) + width / 2, y: inputBox.y }),
          moddle.create('dc:Point', {
            x: left(at) + width / 2,
            y: decisionBox.y + decisionBox.height,
          }),
        ],
      }),
    ),
  );
  const diagram = moddle.create('dmndi:DMNDiagram', {
    id: 'diagram',
    diagramElements: [
      ...drawn.map(({ decision }, index) => shape(decision, index, decisionBox)),
      ...inputs.map((input, index) => shape(input, index, inputBox)),
      ...edges,
    ],
  });
  definitions.set('dmnDI', moddle.create('dmndi:DMNDI', { diagrams: [diagram] }));
}
