/** Runs through the XML of a workbook part: tags and texts by their local names, nothing loaded, nothing expanded. */
import sax from 'sax';
import { damaged } from './zip.ts';

export type Attributes = Readonly<Record<string, string>>;

export interface XmlHandler {
  /** Attributes by local name; those with a prefix of their own as well. */
  open(name: string, attributes: Attributes): void;
  close?(name: string): void;
  text?(text: string): void;
}

/**
 * Calls the handler for every tag. Document type declarations are refused: entities of their own could swell.
 * @throws UnusableSheet where the part is no well-formed XML.
 */
export function eachTag(xml: string, handler: XmlHandler): void {
  const parser = sax.parser(true, { xmlns: true, strictEntities: true });
  parser.onerror = () => {
    throw damaged();
  };
  parser.ondoctype = () => {
    throw damaged('The workbook declares a document type (DOCTYPE), which none needs.');
  };
  parser.onopentag = ({ local, attributes }) => {
    handler.open(
      local,
      Object.fromEntries(Object.values(attributes).map((attribute) => [attribute.local, attribute.value])),
    );
  };
  parser.onclosetag = (name) => handler.close?.(name.slice(name.indexOf(':') + 1));
  parser.ontext = (text) => handler.text?.(text);
  parser.oncdata = (text) => handler.text?.(text);
  parser.write(xml).close();
}
