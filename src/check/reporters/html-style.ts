/** The look of the HTML report: the inks and rules of the site, with one red for what is wrong. */
export const htmlStyle = `
:root{color-scheme:light dark;--paper:#fbfaf6;--tint:#f1efe7;--ink:#15181b;--ink-2:#43484c;--hairline:#c4c0b4;--wrong:#a3171f;--wrong-tint:#f6d3d0;--text:system-ui,'Segoe UI',Roboto,'Noto Sans','Liberation Sans',sans-serif;--mono:ui-monospace,'SF Mono','Cascadia Mono',Menlo,Consolas,'DejaVu Sans Mono','Liberation Mono',monospace}
@media (prefers-color-scheme:dark){:root{--paper:#131517;--tint:#1e2124;--ink:#f2efe7;--ink-2:#c3c1ba;--hairline:#43484c;--wrong:#ff9a92;--wrong-tint:#6b1d1d}}
*{box-sizing:border-box}
html{background:var(--paper);color:var(--ink);font:400 100%/1.55 var(--text)}
body{max-width:64rem;margin:0 auto;padding:0 1rem 3rem;border-top:6px solid var(--ink);overflow-wrap:break-word}
h1,h2,h3,p,ul,ol,pre,dl,dd{margin:0}
h1{font-size:clamp(1.5rem,1.2rem + 1.4vw,2.1rem);line-height:1.2;letter-spacing:-.01em}
h2{font:600 1.05rem/1.4 var(--mono);overflow-wrap:anywhere}
h3{font:600 1rem/1.4 var(--mono)}
header{padding:1.5rem 0 2rem}
.sum{margin-top:.5rem;font-size:1.2rem}
nav{padding-bottom:2rem}
nav ol{padding:0;list-style:none}
nav li{border-top:1px solid var(--hairline);padding:.5rem 0}
nav a{font-family:var(--mono);overflow-wrap:anywhere}
nav li:last-child{border-bottom:1px solid var(--hairline)}
.count{white-space:nowrap}
.related mark{background:none;box-shadow:0 2px 0 currentColor}
.count,.at{color:var(--ink-2);font-size:.9rem}
a{color:inherit;text-underline-offset:.22em}
section{border-top:2px solid var(--ink);padding:1rem 0 2rem}
.findings{padding:0;list-style:none}
.finding{padding:1rem 0;border-bottom:1px solid var(--hairline)}
.finding>*+*{margin-top:.5rem}
.head{display:flex;flex-wrap:wrap;gap:.25rem 1rem;align-items:baseline}
.error .head strong{color:var(--wrong)}
.head a{font-family:var(--mono);font-size:.95rem}
.what{font-size:1.1rem;font-weight:600}
.what,.help,.rules p{max-width:42rem}
.help::before{content:'→ '/'';color:var(--ink-2)}
pre{white-space:pre-wrap;overflow-wrap:anywhere;font:.92rem/1.5 var(--mono);background:var(--tint);padding:.5rem .75rem}
.finding pre{display:grid;grid-template-columns:auto 1fr;column-gap:.75rem}
.line{color:var(--ink-2);user-select:none}
mark{background:var(--wrong-tint);color:inherit;box-shadow:0 2px 0 var(--wrong)}
.point{border-left:2px solid var(--wrong);box-shadow:none}
.related{padding-left:1rem;border-left:2px solid var(--hairline);color:var(--ink-2)}
.related>*+*{margin-top:.25rem}
.rules article{padding:1.25rem 0;border-top:1px solid var(--hairline)}
.rules article>*+*{margin-top:.5rem}
.rules dl{display:grid;grid-template-columns:auto 1fr;gap:.25rem 1rem}
dt{color:var(--ink-2);padding-top:.5rem}
dd{min-width:0}
:target{background:var(--tint);box-shadow:-.375rem 0 0 var(--ink)}
@media print{nav{display:none}}
`;
