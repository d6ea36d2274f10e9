/**
 * `<readback-code-field>`: the code field and its answer on a page of another site. All it needs is fetched from the
 * site its script was loaded from, when the field is first used; it keeps nothing, and asks no one else.
 */
import type { CodeCandidate } from '../../codes/index.ts';
import { codesPath, profilePath } from '../../views/paths.ts';
import { phrase } from '../../words/index.ts';
import { type Lookup, loadLookup } from '../code-index.ts';
import { codeItem } from '../code-items.ts';
import { codeText } from '../code-text.ts';
import { make } from '../make.ts';
import { noSignal } from '../no-signal.ts';
import { looksLikeWords } from '../query.ts';
import { resultList } from '../result-list.ts';
import { searchFor } from '../search-codes.ts';
import { verdictWords } from '../verdict-words.ts';
import { fieldParts } from './field-parts.ts';
import { embedStyle } from './style.ts';

const tag = 'readback-code-field';

/** Known only while the script is first run. The script lies one folder below the site. */
const script = document.currentScript;
const site = script instanceof HTMLScriptElement ? new URL('..', script.src).href : undefined;

class CodeField extends HTMLElement {
  connectedCallback(): void {
    // Where it was loaded as something else than a script of its own, the plain link stays.
    if (this.shadowRoot || site === undefined) return;
    fill(this, site);
  }
}

function fill(host: HTMLElement, base: string): void {
  const { frame, form, input, verdict, results, answer, home } = fieldParts(
    host.getAttribute('label') ?? phrase('Code on your screen'),
    `${base}${codesPath}`,
  );
  const root = host.attachShadow({ mode: 'open', delegatesFocus: true });
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(embedStyle);
  root.adoptedStyleSheets = [sheet];
  root.append(frame);

  const addresses = { base };
  const candidates = new Map<HTMLLIElement, CodeCandidate>();
  let asked = 0;

  const say = (words: string): void => {
    if (verdict.textContent !== words) verdict.textContent = words;
  };
  const clear = (words: string): void => {
    list.show([]);
    answer.replaceChildren();
    answer.hidden = true;
    home.hidden = true;
    say(words);
  };

  const showAnswer = async (lookup: Lookup, { code, family, profile }: CodeCandidate): Promise<void> => {
    asked += 1;
    const mine = asked;
    const sentence = await lookup.sentence(profile);
    if (mine !== asked) return;
    clear('');
    answer.hidden = false;
    answer.append(
      make('p', {}, codeText(code)),
      make('p', { class: 'result-family' }, lookup.familyNames.get(family) ?? ''),
      make('p', { class: 'sentence' }, sentence),
      make('a', { href: `${base}${profilePath(profile)}` }, phrase('Everything known of {code}', { code })),
    );
  };

  const update = async (): Promise<void> => {
    const typed = input.value.trim();
    asked += 1;
    const mine = asked;
    if (typed === '') return clear('');
    if (looksLikeWords(typed))
      return clear(phrase('These are words. Type the code that stands on the screen.'));
    const lookup = await loadLookup(addresses).catch(() => undefined);
    if (mine !== asked) return;
    const unit = host.getAttribute('unit') ?? undefined;
    const search =
      lookup && (await searchFor(lookup, typed, unit, () => mine === asked).catch(() => undefined));
    if (mine !== asked) return;
    if (!lookup || !search) {
      clear(noSignal());
      home.hidden = false;
      return;
    }
    const [best, ...others] = [...search.candidates, ...search.elsewhere];
    if (search.verdict === 'found' && best && others.length === 0 && best.likeness !== 'near') {
      return showAnswer(lookup, best);
    }
    clear(verdictWords(search));
    candidates.clear();
    list.show(
      [...search.candidates, ...search.elsewhere].map((candidate, at) => {
        const item = codeItem(lookup, candidate, at, base);
        candidates.set(item, candidate);
        return item;
      }),
    );
  };

  const open = async (item: HTMLLIElement, inNewTab: boolean): Promise<void> => {
    const candidate = candidates.get(item);
    if (!candidate) return;
    if (inNewTab) {
      window.open(`${base}${profilePath(candidate.profile)}`, '_blank', 'noopener');
      return;
    }
    input.value = candidate.code;
    await showAnswer(await loadLookup(addresses), candidate);
  };

  const list = resultList(input, results, {
    open: (item, inNewTab) => void open(item, inNewTab),
    clear: () => {
      input.value = '';
      void update();
    },
  });
  input.addEventListener('input', () => void update());
  input.addEventListener('focus', () => void loadLookup(addresses).catch(() => undefined), { once: true });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const chosen = list.chosen();
    if (chosen) void open(chosen, false);
    else void update();
  });
}

// A page may load the script twice.
if (!customElements.get(tag)) customElements.define(tag, CodeField);
