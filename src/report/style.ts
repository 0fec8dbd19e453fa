/** How the report looks: on a phone, on a screen and on paper, A4 as well as Letter. */
export const STYLE = `html { color-scheme: light; }
body { margin: 0 auto; max-width: 69rem; padding: 1rem; background: #fff; color: #16191d;
	font: 16px/1.45 system-ui, sans-serif; overflow-wrap: break-word; }
h1 { margin: 0; font-size: 1.8rem; }
h2 { margin: 2rem 0 0.5rem; padding-top: 0.5rem; border-top: 2px solid #16191d; font-size: 1.25rem; }
p, ul, dl { margin: 0.5rem 0; }
ul { padding-left: 1.2rem; }
dl { display: grid; grid-template-columns: minmax(6rem, max-content) 1fr; gap: 0.1rem 1rem; }
dt { color: #4a525c; }
dd { margin: 0; min-width: 0; }
a { color: inherit; }
figure { margin: 1rem 0; }
figure svg { display: block; width: 100%; height: auto; }
figure path { stroke-width: 0.8px; vector-effect: non-scaling-stroke; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; font-size: 0.75rem; font-variant-numeric: tabular-nums; }
th, td { padding: 0.1rem 0.45rem; border-bottom: 1px solid #d3d8de; text-align: right;
	vertical-align: top; white-space: nowrap; }
thead th { border-bottom-color: #16191d; color: #4a525c; font-weight: normal; }
.names th:first-child, .names td:first-child, .claims th:nth-child(-n+2),
.claims td:nth-child(-n+2), tbody th { text-align: left; }
tbody th { padding-top: 0.6rem; font-weight: 600; white-space: normal; }
.off td { color: #9a0c0c; font-weight: 600; }
.claims td:first-child { white-space: normal; }
.many { columns: 2 31rem; column-gap: 2rem; }
.many table { font-size: 0.7rem; }
.small { color: #4a525c; font-size: 0.85rem; }
@page { margin: 14mm 12mm; }
@media print {
	body { max-width: none; padding: 0; font-size: 9.5pt; }
	h2, thead, tbody th { break-after: avoid; }
	figure, tr, li, .brief { break-inside: avoid; }
	figure svg { max-height: 170mm; }
	.long { break-before: page; }
	.scroll { overflow: visible; }
	table { font-size: 7pt; }
	th, td { padding: 0.2mm 1mm; }
	.many { columns: 2; column-gap: 6mm; }
	.many table { font-size: 6.5pt; }
	.many th, .many td { padding: 0.2mm 0.6mm; }
	a { text-decoration: none; }
}
`;
