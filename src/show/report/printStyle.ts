/** Paper: A4 and Letter alike. Two cards one under the other, or four in two columns; none is cut. */

export const printStyle = `
@page{margin:10mm}
@media print{
html{font-size:9pt;line-height:1.3}
body{max-width:none;padding:0}
.controls,#cards-head,.sweep-link,.cursor{display:none}
.title-block{margin-top:0}
a{color:inherit;text-decoration:none}
.wide{overflow:visible}
.sheet table{font-size:7.5pt;min-width:0}
.sheet{break-before:page}.sweeps{break-before:page}.sweep-sheet{break-inside:avoid;max-width:none}
.chart{break-inside:avoid}
.overview>.drawing{max-height:235mm}
tr,.drawing,li,p{break-inside:avoid}
h2{break-after:avoid}
.cards{break-before:page;gap:4mm}
.card{break-inside:avoid;content-visibility:visible;padding:3mm;min-height:124mm;display:flex;flex-direction:column}
.card-body{flex:1;grid-template-columns:72mm minmax(0,1fr);gap:4mm;margin-top:2mm}
.card-right{display:flex;flex-direction:column}
.write-in{margin-top:auto;padding-top:2mm}
.card-notes{font-size:7pt}
.card-settings table{font-size:8pt}
th,td{padding:.3mm 1mm}
.now{font-size:7pt}
[data-cards="4"] .cards{grid-template-columns:repeat(2,minmax(0,1fr))}
[data-cards="4"] .card{padding:2mm;font-size:7.5pt}
[data-cards="4"] .card-body{grid-template-columns:minmax(0,1fr);gap:1mm}
[data-cards="4"] .card-left .drawing{max-height:38mm;margin:0 auto}
[data-cards="4"] .card-drawings,[data-cards="4"] .now{display:none}
[data-cards="4"] .big{font-size:12pt}
[data-cards="4"] .card-settings table,[data-cards="4"] .card-notes{font-size:6pt}
[data-print="cards"] .title-block,[data-print="cards"] main>section:not(.cards){display:none}
[data-print="cards"] .cards{break-before:auto}
}
`;
