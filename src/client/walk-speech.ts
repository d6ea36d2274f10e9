/** Reads the walk aloud, where the browser can and the rider has asked for it. */

import { phrase } from '../words/index.ts';

const memoryKey = 'readback.read-aloud';

/** Binds the button that turns reading on and off; what is returned says a text while it is on. */
export function bindSpeech(button: HTMLButtonElement, current: () => string): (text: string) => void {
  if (!('speechSynthesis' in window)) return () => {};
  const { speechSynthesis } = window;
  let isOn = remembered();

  const say = (text: string): void => {
    if (!isOn || text === '') return;
    // What is being said is out of date as soon as there is something new to say.
    speechSynthesis.cancel();
    const utterance = new SpeechSynthesisUtterance(text);
    utterance.lang = phrase('en');
    speechSynthesis.speak(utterance);
  };
  const show = (): void => {
    button.setAttribute('aria-pressed', String(isOn));
    button.textContent = isOn ? phrase('Reading aloud: stop') : phrase('Read aloud');
  };

  button.hidden = false;
  show();
  button.addEventListener('click', () => {
    isOn = !isOn;
    remember(isOn);
    show();
    if (isOn) say(current());
    else speechSynthesis.cancel();
  });
  return say;
}

/** Storage can be forbidden altogether; then every page begins silent. */
function remembered(): boolean {
  try {
    return window.sessionStorage.getItem(memoryKey) === 'on';
  } catch {
    return false;
  }
}

function remember(isOn: boolean): void {
  try {
    window.sessionStorage.setItem(memoryKey, isOn ? 'on' : 'off');
  } catch {
    // Nothing is lost but the memory.
  }
}
