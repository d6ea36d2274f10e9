/** The code field elsewhere, data for other programs, what the check demands. */
import type { Texts } from '../language.ts';

export const pagesDataTexts: Texts = {
  '#fbfaf6, in the dark #131517': '#fbfaf6, en oscuro #131517',
  '<code>unit="…"</code> on the element looks among the codes of one unit first, named as in the address of its page; <code>label="…"</code> puts other words above the field.':
    '<code>unit="…"</code> en el elemento busca primero entre los códigos de una unidad, nombrada como en la dirección de su página; <code>label="…"</code> pone otras palabras sobre el campo.',
  '<link>A feed</link> (Atom) tells of new bench sessions, and of answers that changed where this site was built to tell.':
    '<link>Un canal</link> (Atom) avisa de las nuevas sesiones de banco y, si este sitio se creó para ello, de las respuestas que cambiaron.',
  'A colour of one’s own': 'Un color propio',
  'A dealer, club or forum can put the code field into a page of its own: one script, no cookies, no trackers, no frame.':
    'Un concesionario, club o foro puede poner el campo de código en una página propia: un script, sin cookies, sin rastreadores, sin marcos.',
  'A dealer, club or forum can put the field into a page of its own. What is typed there is looked up on the reader’s device; the answer leads here.':
    'Un concesionario, club o foro puede poner el campo en una página propia. Lo que se escribe allí se busca en el dispositivo de quien lee; la respuesta lleva aquí.',
  'A page with a content security policy has to allow this site as <code>script-src</code> and <code>connect-src</code>.':
    'Una página con política de seguridad de contenido tiene que permitir este sitio en <code>script-src</code> y <code>connect-src</code>.',
  'Ask us before you publish it elsewhere: no licence is given.':
    'Consúltenos antes de publicarlo en otro lugar: no se da ninguna licencia.',
  'CSV files with a description of every column, its unit and where the rows come from: a data package (version 2.0 of that standard) described by <link>datapackage.json</link>.':
    'Archivos CSV con una descripción de cada columna, su unidad y de dónde vienen las filas: un paquete de datos (versión 2.0 de ese estándar) descrito por <link>datapackage.json</link>.',
  Documents: 'Documentos',
  'Every entry and reading on this site has passed these rules; what fails one is not published.':
    'Cada entrada y lectura de este sitio ha pasado estas reglas; lo que incumple una no se publica.',
  'Every reading and every value computed from it, for other programs: as tables and as JSON.':
    'Cada lectura y cada valor calculado a partir de ella, para otros programas: en tablas y en JSON.',
  Exceptions: 'Excepciones',
  'Findings that are known and have been set aside, each with a reason and a last day.':
    'Hallazgos conocidos que se han apartado, cada uno con un motivo y un último día.',
  For: 'Para',
  'For example': 'Por ejemplo:',
  'For whoever runs this site’s server': 'Para quien lleva el servidor de este sitio',
  'If not set': 'Si no se fija',
  'It adds one element to the page and no name to its scripts; the styles of your page do not reach into it, nor its out.':
    'Añade un elemento a la página y ningún nombre a sus scripts; los estilos de su página no entran en él, ni los suyos salen.',
  'It comes up like this:': 'Se ve así:',
  'It fetches its script when your page is loaded, and the list of codes when the field is first used: both from this site, nothing from anywhere else.':
    'Carga su script al abrirse la página de usted y la lista de códigos al usarse el campo por primera vez: ambos de este sitio, nada de ninguna otra parte.',
  'It is light or dark as the page around it says by <code>color-scheme</code>. The rest is set by properties, for instance the colour of this shop:':
    'Es claro u oscuro según lo diga la página que lo rodea con <code>color-scheme</code>. Lo demás se fija con propiedades, por ejemplo el color de este taller:',
  'It sets no cookie, keeps nothing on the device, and tells no one what was typed.':
    'No pone ninguna cookie, no guarda nada en el dispositivo y no le dice a nadie lo que se escribió.',
  'Its looks': 'Su aspecto',
  'JSON documents, one a profile, unit and table, with the values of the pages in full, their expanded uncertainty, conditions, readings and sources. They are described by <link>openapi.json</link> (OpenAPI 3.1). What is below <code>api/v1/</code> keeps its shape; another shape gets an address of its own.':
    'Documentos JSON, uno por perfil, unidad y tabla, con los valores de las páginas completos, su incertidumbre expandida, condiciones, lecturas y fuentes. Los describe <link>openapi.json</link> (OpenAPI 3.1). Lo que está bajo <code>api/v1/</code> conserva su forma; otra forma recibe su propia dirección.',
  'Look up your code at {shop}': 'Busque su código en {shop}',
  'One file a bench session.': 'Un archivo por sesión de banco.',
  'One file a bench session: {columns}.': 'Un archivo por sesión de banco: {columns}.',
  'Pages of other sites may have the list of codes only if these files come with a header:':
    'Las páginas de otros sitios solo pueden recibir la lista de códigos si estos archivos llegan con una cabecera:',
  'Properties that can be set': 'Propiedades que se pueden fijar',
  Property: 'Propiedad',
  'Put this where the field is to stand. Without scripts, the link in it stays.':
    'Ponga esto donde deba estar el campo. Sin scripts, queda el enlace que contiene.',
  Right: 'Bien',
  Rules: 'Reglas',
  'The element and its script': 'El elemento y su script',
  'The frame can be reached as <code>readback-code-field::part(frame)</code>.':
    'Al marco se llega con <code>readback-code-field::part(frame)</code>.',
  'The header and its files': 'La cabecera y sus archivos',
  'What it does, and what it does not': 'Lo que hace y lo que no hace',
  'What to copy': 'Qué copiar',
  'What you may do with it: <link>{licence}</link>.':
    'Lo que se puede hacer con ello: <link>{licence}</link>.',
  'Where it is missing, the field says that the list did not come through, and shows the link.':
    'Donde falta, el campo dice que la lista no llegó y muestra el enlace.',
  Wrong: 'Mal',
  'as the ink': 'como la tinta',
  'left out': 'omitido',
  'no such file': 'no hay tal archivo',
  'text, frame and button': 'texto, marco y botón',
  'that of the device': 'la del dispositivo',
  'the device’s own of one width': 'la de ancho fijo del dispositivo',
  'the face of codes': 'la letra de los códigos',
  'the face of the text': 'la letra del texto',
  'the ground': 'el fondo',
  'the ground of the form and of the chosen line': 'el fondo del formulario y de la línea elegida',
  'the line under the field and under links': 'la línea bajo el campo y bajo los enlaces',
  'the lines between results': 'las líneas entre resultados',
  'the size of the text; all else follows': 'el tamaño del texto; lo demás lo sigue',
  'what matters less': 'lo menos importante',
};
