/** Paper: A4 and Letter alike. Two cards one under the other, or four in two columns; none is cut. */

/** Half of the shorter paper (Letter) less its margins. */
const CARD_MM = 125;

export const printStyle = `
@page{margin:10mm}
@media print{
html{font-size:9pt;line-height:1.25;background:none}
.sheet th{overflow-wrap:normal}
body{max-width:none;padding:0}
.controls,#cards-head,.sweep-link,.cursor{display:none}
.title-block{margin-top:0}
a{color:inherit;text-decoration:none}
h2{break-after:avoid}
tr,.drawing,li,.chart,.sweep-sheet,.key{break-inside:avoid}
.wide{overflow:visible}
.overview>.drawing{max-height:225mm}
.sheet,.cards,.sweeps{break-before:page}
.sheet table{font-size:7pt;min-width:0}
.sheet th,.sheet td{padding:.3mm .8mm}
.num{white-space:normal}
.sweep-sheet{max-width:none}
.cards{gap:3mm}
.card{break-inside:avoid;content-visibility:visible;contain-intrinsic-size:none;min-height:${CARD_MM}mm;padding:2.5mm 3mm 1mm;display:flex;flex-direction:column}
.card-head p{font-size:7.5pt}
.card-body{flex:1;grid-template-columns:84mm minmax(0,1fr);grid-template-rows:auto 1fr auto auto;column-gap:4mm;margin-top:1mm}
.card-left{grid-row:1/span 2}
.card-body>.card-notes,.card-body>.write-in{grid-column:1/span 2}
.picture .drawing{max-height:74mm}
.card-drawings{display:none}
.now{font-size:6.5pt;min-height:0}
.big{font-size:14pt}
.card-settings table{font-size:7.5pt}
.card-settings th,.card-settings td{padding:.2mm .8mm}
.card-sun{font-size:7.5pt}.card-sun h4{font-size:8.5pt;margin:.5mm 0}.card-sun.meets{margin-top:1mm}
.card-notes{font-size:6.5pt;line-height:1.2;columns:2;column-gap:5mm;margin-top:1mm}
.write-in{grid-template-columns:1fr 1fr 1fr 2fr 1.3fr 1fr 1.6fr;gap:2mm;margin-top:1.5mm}
.write-meter,.write-set{grid-column:auto}
.write-in dt{font-size:6pt}.write-in dd{height:6mm}
.card-foot{font-size:6pt;margin-top:.5mm}
[data-cards="4"] .cards{grid-template-columns:repeat(2,minmax(0,1fr))}
[data-cards="4"] .card{padding:2mm 2mm 1mm}
[data-cards="4"] .card-head{display:block}[data-cards="4"] .card-head p{font-size:6.5pt}
[data-cards="4"] .card-body{display:block}
[data-cards="4"] .picture .drawing{max-height:36mm}
[data-cards="4"] .scale{display:none}[data-cards="4"] .frame-label{font-size:17px}
[data-cards="4"] .now{font-size:5.4pt}
[data-cards="4"] .big{font-size:11pt;margin:.5mm 0}[data-cards="4"] .big small{font-size:7pt}
[data-cards="4"] .card-settings table{font-size:6pt}
[data-cards="4"] .card-settings th,[data-cards="4"] .card-settings td{padding:.1mm .5mm}
[data-cards="4"] .card-sun{font-size:6.5pt}[data-cards="4"] .card-sun h4{font-size:7.5pt}
[data-cards="4"] .card-notes{font-size:5.4pt;columns:1}[data-cards="4"] .card-foot{font-size:5pt}
[data-cards="4"] .write-in{grid-template-columns:repeat(4,1fr);gap:.5mm 1.5mm;margin-top:auto}
[data-cards="4"] .write-in dd{height:4.5mm}
[data-print="cards"] .title-block,[data-print="cards"] main>section:not(.cards,.key){display:none}
[data-print="cards"] .cards{break-before:auto}
}
`;
