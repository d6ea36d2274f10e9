/** The cautions: nothing here may be weaker than the English. */
import type { Texts } from '../language.ts';

export const cautionTexts: Texts = {
  'Only when parked.': 'Solo con la moto parada.',
  'Put the motorcycle on its stand, on level ground, out of traffic. Never work a service screen while riding or with a passenger on the machine.':
    'Ponga la moto sobre su caballete, en suelo llano y fuera del tráfico. Nunca maneje una pantalla de servicio en marcha ni con un pasajero sobre la moto.',
  'Ignition on, engine off.': 'Contacto dado, motor apagado.',
  'The service screen needs the ignition, not the engine. Never run the engine indoors, not even with the door open: exhaust holds carbon monoxide, which has no smell and kills.':
    'La pantalla de servicio necesita el contacto, no el motor. Nunca tenga el motor en marcha en un lugar cerrado, ni siquiera con la puerta abierta: el escape contiene monóxido de carbono, que no huele y mata.',
  'Look, change nothing.': 'Mire, no cambie nada.',
  'Service screens also hold settings and resets. Read the code and leave. Do not confirm, save or reset anything; a wrong setting can need a workshop to undo.':
    'Las pantallas de servicio también contienen ajustes y restablecimientos. Lea el código y salga. No confirme, guarde ni restablezca nada; deshacer un ajuste equivocado puede requerir un taller.',
  'Mind the battery.': 'Cuide la batería.',
  'With the ignition on and the engine off, lamps and audio drain the battery. Be done in about ten minutes, or connect a charger meant for motorcycle batteries, and follow its instructions.':
    'Con el contacto dado y el motor apagado, las luces y el audio descargan la batería. Termine en unos diez minutos, o conecte un cargador para baterías de moto y siga sus instrucciones.',
  'No ground on these outputs.': 'Nada de masa en estas salidas.',
  'The speaker outputs are bridged: both terminals are driven and neither is ground. Never connect either one to ground, nor the ground clip of an oscilloscope, a grounded meter or an amplifier input that ties its shield to ground. It can destroy the head unit. Measure with a floating meter, or differentially.':
    'Las salidas de altavoz están en puente: los dos bornes llevan señal y ninguno es masa. Nunca conecte ninguno a masa, ni la pinza de masa de un osciloscopio, ni un medidor conectado a tierra, ni una entrada de amplificador que una su malla a masa. Puede destruir la unidad principal. Mida con un medidor flotante o en modo diferencial.',
  'Disconnect the battery before wiring.': 'Desconecte la batería antes de cablear.',
  'Take the negative cable off first and put it back last, as the owner’s handbook of the machine describes. Never cut or join wires on a live harness.':
    'Quite primero el cable negativo y póngalo el último, como describe el manual de la moto. Nunca corte ni una cables en una instalación con tensión.',
  'Fuse close to the battery, sized for the wire.': 'Fusible junto a la batería, según el cable.',
  'Every wire from the battery needs a fuse as near to the battery as it can be, rated for no more than that wire can carry. Without it a chafed wire is a fire. Local codes and the amplifier’s handbook decide; where in doubt have a licensed workshop do it.':
    'Cada cable que sale de la batería necesita un fusible lo más cerca posible de ella, de no más corriente de la que ese cable soporta. Sin él, un cable rozado es un incendio. Deciden las normas locales y el manual del amplificador; en caso de duda, encárguelo a un taller autorizado.',
  'Mind your hearing.': 'Cuide su oído.',
  'Test tones and motorcycle systems are loud enough to harm hearing for good. Begin at the lowest volume step, keep away from the speakers, and wear hearing protection for tests at high volume. On the road you must still hear the traffic.':
    'Los tonos de prueba y los equipos de moto suenan tan fuerte que pueden dañar el oído para siempre. Empiece en el paso de volumen más bajo, aléjese de los altavoces y use protección auditiva en pruebas a volumen alto. En la carretera tiene que seguir oyendo el tráfico.',
  'Local law and codes, the maker’s handbook and a licensed workshop come before anything written here.':
    'Las leyes y normas locales, el manual del fabricante y un taller autorizado están por encima de todo lo escrito aquí.',
};
