/** Lines and letters alone tell everything: no colour is needed, and what a reader sets is kept. */
export const PAGE_STYLE = `
:root{color-scheme:light dark;--paper:#fff;--ink:#1b1b1b;--faint:#555;--line:#8a8a8a;--band:#f1f1ef}
@media (prefers-color-scheme:dark){:root{--paper:#1c1d1f;--ink:#f1f1ef;--faint:#b9b9b6;--line:#7d7f83;--band:#292b2e}}
@media (forced-colors:active){:root{--paper:Canvas;--ink:CanvasText;--faint:CanvasText;--line:CanvasText;--band:Canvas}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:64rem;padding:1rem 1.25rem 3rem;background:var(--paper);color:var(--ink);font:1rem/1.45 system-ui,sans-serif}
h1{font-size:1.7rem;line-height:1.2;margin:1rem 0 .25rem}
h2{font-size:1.3rem;line-height:1.25;margin:2rem 0 .5rem}
h3{font-size:1.05rem;margin:1.5rem 0 .4rem}
p{margin:.4rem 0;max-width:44rem}
a{color:inherit}
.between,footer{color:var(--faint)}
.table{overflow-x:auto}
.table:focus-visible,a:focus-visible{outline:3px solid var(--ink);outline-offset:2px}
table{border-collapse:collapse;font-variant-numeric:tabular-nums}
th,td{padding:.3rem .7rem;text-align:left;vertical-align:top;border-bottom:1px solid var(--line);overflow-wrap:break-word}
thead th,thead td{border-bottom:2px solid var(--ink);background:var(--band)}
tbody th{font-weight:normal}
th.right,td.right{text-align:right;white-space:nowrap;overflow-wrap:normal}
td.difference{font-weight:bold}
.prose{min-width:16rem}
tr:target{outline:3px solid var(--ink);outline-offset:-3px}
.sign td{min-width:14rem;height:3.2rem;border-bottom:1px solid var(--ink)}
.sign th{vertical-align:bottom}
figure{margin:1.5rem 0}
svg.plan{display:block;width:100%;height:auto;max-height:80vh;border:1px solid var(--line)}
figcaption{margin-top:.4rem}
footer{margin-top:3rem;border-top:1px solid var(--line);padding-top:.5rem;font-size:.875rem}
@media print{
@page{margin:15mm}
:root{color-scheme:light;--paper:#fff;--ink:#000;--faint:#000;--line:#000;--band:#fff}
body{max-width:none;padding:0;font-size:10pt}
h1,h2,h3{break-after:avoid}
tr,figure,.sign{break-inside:avoid}
thead{display:table-header-group}
.table{overflow:visible}
svg.plan{max-height:230mm;border:0}
a{text-decoration:none}
.job+.job{break-before:page}
}
`.trim();
