/**
 * The looks of the code field on other sites: those of `src/styles/tokens.css`, light or dark as the page around it is
 * (`color-scheme`). Sizes are in `em` of one size, as a page’s `rem` may be
 * anything; names begin with `--_`, as a page may set ours from names of its own.
 */
export const embedStyle = `
:host {
  all: initial;
  display: block;
  color-scheme: inherit;
  --_paper: var(--readback-paper, #fbfaf6);
  --_tint: var(--readback-tint, #f1efe7);
  --_ink: var(--readback-ink, #15181b);
  --_quiet: var(--readback-quiet-ink, #43484c);
  --_line: var(--readback-line, #c4c0b4);
  --_spot: var(--readback-spot, var(--_ink));
  --_text: var(--readback-face, system-ui, 'Segoe UI', Roboto, 'Helvetica Neue', 'Noto Sans', 'Liberation Sans', sans-serif);
  --_mono: var(--readback-code-face, ui-monospace, 'SF Mono', 'Cascadia Mono', Menlo, Consolas, 'Roboto Mono', 'DejaVu Sans Mono', 'Liberation Mono', monospace);
  font: 400 var(--readback-size, 17px) / 1.5 var(--_text);
  color: var(--_ink);
}
@supports (color: light-dark(#000, #fff)) {
  :host {
    --_paper: var(--readback-paper, light-dark(#fbfaf6, #131517));
    --_tint: var(--readback-tint, light-dark(#f1efe7, #1e2124));
    --_ink: var(--readback-ink, light-dark(#15181b, #f2efe7));
    --_quiet: var(--readback-quiet-ink, light-dark(#43484c, #c3c1ba));
    --_line: var(--readback-line, light-dark(#c4c0b4, #43484c));
  }
}
:host([hidden]), [hidden] { display: none; }
*, ::before { box-sizing: border-box; }
p, ul { margin: 0; padding: 0; list-style: none; overflow-wrap: break-word; }
.frame { border: 2px solid var(--_ink); background: var(--_paper); }
form { padding: 1em; background: var(--_tint); }
label { display: block; font-size: 1.15em; font-weight: 650; }
.row { display: flex; flex-wrap: wrap; gap: .75em; margin-top: .6em; }
input {
  flex: 1 1 10em; min-width: 0; min-height: max(2.2em, 56px); padding: .2em .5em;
  border: 2px solid var(--_ink); border-bottom: .25em solid var(--_spot); border-radius: 0;
  background: var(--_paper); color: var(--_ink);
  font: 600 1.75em / 1.2 var(--_mono); font-feature-settings: 'zero';
}
button {
  flex: 1 0 auto; min-height: max(3em, 48px); padding: 0 1.5em; border: 2px solid var(--_ink); border-radius: 0;
  background: var(--_ink); color: var(--_paper); cursor: pointer; font: 600 1em / 1 var(--_text);
}
input:focus, :focus-visible { outline: 3px solid var(--_ink); outline-offset: 2px; }
.hint { margin-top: .6em; color: var(--_quiet); font-size: .9em; }
#verdict:not(:empty), .answer, .home { padding: .9em 1em; }
#verdict { font-size: 1.1em; font-weight: 600; line-height: 1.35; }
#verdict:empty { display: none; }
li { padding: .9em 1em; border-top: 1px solid var(--_line); cursor: pointer; min-height: 48px; }
li:hover, [aria-selected='true'] { background: var(--_tint); }
[aria-selected='true'] { box-shadow: inset .5em 0 0 var(--_spot); padding-left: 1.4em; }
.code { font: 600 1.5em / 1.2 var(--_mono); font-feature-settings: 'zero'; white-space: nowrap; }
.zero {
  background: linear-gradient(122deg, #0000 calc(50% - .04em), currentColor calc(50% - .035em) calc(50% + .035em), #0000 calc(50% + .04em))
    center / .32em .46em no-repeat;
}
.result-family { color: var(--_quiet); font-size: .9em; font-weight: 600; }
.result-note { font-weight: 600; }
#verdict:not(:empty), .answer { border-top: 2px dashed var(--_ink); }
.sentence { max-width: 34em; margin: .4em 0; font-size: 1.15em; font-weight: 500; line-height: 1.4; }
a, ::slotted(a) { color: inherit; text-decoration: underline 2px; text-decoration-color: var(--_spot); text-underline-offset: .22em; }
a, ::slotted(a) { display: inline-flex; align-items: center; min-height: 48px; font-weight: 600; }
`;
