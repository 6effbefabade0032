/** The page's style: screen in light and dark, and paper. */

import { drawingStyle, FONT } from "../draw/drawingStyle.ts";
import { DARK_PALETTE, LIGHT_PALETTE, LIGHT_TONES, onTone, type Palette } from "../draw/palette.ts";
import { cardStyle } from "./cardStyle.ts";
import { printStyle } from "./printStyle.ts";

/** Paper is always light. */
export const pageStyle = (): string =>
  [
    layout,
    cardStyle,
    colours(LIGHT_PALETTE),
    drawingStyle(LIGHT_PALETTE),
    `@media screen and (prefers-color-scheme:dark){${colours(DARK_PALETTE)}${drawingStyle(DARK_PALETTE)}}`,
    printStyle,
  ].join("");

const colours = ({ paper, shade, ink, soft, faint, mark, alarm, warn }: Palette): string => `
html{background:${paper};color:${ink}}
a{color:${mark}}
.controls,.card,th,td,.wide{border-color:${faint}}
.controls,thead th{background:${shade}}
.controls input,.controls select{background:${paper};color:${ink};border:1px solid ${soft}}
:focus-visible{outline:3px solid ${mark};outline-offset:1px}
.soft,.card-foot,.count{color:${soft}}
.clipped,.sun-in-frame,.blocked{color:${alarm}}
.sun-near-frame,.sun-hidden{text-decoration-color:${warn}}
.card-sun.meets{border-left-color:${alarm}}
.title-block{border-color:${ink}}
#t0-text{color:${mark}}
.write-in dd{border-color:${ink}}
`;

const layout = `
*{box-sizing:border-box}
html{font:15px/1.4 ${FONT};font-variant-numeric:tabular-nums}
body{margin:0 auto;max-width:96rem;padding:0 1rem 3rem}
h1{font-size:1.5rem;margin:0}h2{font-size:1.15rem;margin:1.6rem 0 .5rem}h3{font-size:1.3rem;margin:0}h4{font-size:1rem;margin:.4rem 0 .2rem}
p{margin:.15rem 0}ul{margin:.2rem 0;padding-left:1.1rem}
bdi,h1,h3,td,th,li,p{overflow-wrap:anywhere}
.patterns{position:absolute}
.title-block{border:2px solid;border-left-width:10px;padding:.6rem 1rem;margin:1rem 0}
.controls{position:sticky;top:0;z-index:2;border-bottom:1px solid;padding:.5rem .8rem}
.controls[hidden]{display:none}
.control-t0{display:flex;gap:.7rem;align-items:center;flex-wrap:wrap}
.control-t0 input[type=range]{flex:1 1 18rem;min-width:8rem}
.control-t0 input[type=number]{width:6rem}
#t0-text{font-size:1.25rem;font-weight:700;min-width:6.5ch}
.control-row{display:flex;gap:.4rem 1rem;flex-wrap:wrap;margin-top:.4rem;font-size:.9rem}
.control-row select{max-width:10.5rem}
.control-row label{display:inline-flex;gap:.35rem;align-items:center}
.count,.stamp{font-size:.85rem}
.troubles{font-weight:600}
.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%}
.sheet table{table-layout:fixed;min-width:64rem}
.sheet th:nth-child(1){width:9%}.sheet th:nth-child(2){width:7%}.sheet th:nth-child(3){width:9%}.sheet th:nth-child(4){width:8%}.sheet th:nth-child(5){width:9%}.sheet th:nth-child(6){width:5%}.sheet th:nth-child(7){width:17%}.sheet th:nth-child(8){width:15%}
th,td{border-bottom:1px solid;padding:.15rem .5rem;text-align:left;vertical-align:top}
thead th{font-weight:600;font-size:.85rem}
.num{white-space:nowrap}
.sheet thead th{overflow-wrap:normal}
.clipped,.sun-in-frame,.blocked{font-weight:700}
.sheet .blocked{font-size:.75rem}
.sun-near-frame,.sun-hidden{text-decoration:underline;text-decoration-thickness:2px}
.chip{display:inline-block;min-width:4.2rem;text-align:center;border:1px solid #16191d;padding:0 .3rem}
${Object.entries(LIGHT_TONES)
  .map(
    ([light, tone]) =>
      `.chip-${light}{background:${tone};color:${onTone(light as keyof typeof LIGHT_TONES)}}`,
  )
  .join("")}
.drawing{display:block;max-width:100%;height:auto}
.sun-facts{display:grid;grid-template-columns:minmax(16rem,24rem) 1fr;gap:1rem 2rem;margin-bottom:.8rem}
@media (max-width:50rem){.sun-facts{grid-template-columns:minmax(0,1fr)}}
.chart{margin:0 0 1.2rem}figcaption{font-weight:600;margin-bottom:.2rem}
.chart-sheet{position:relative}
.sweep-sheet{margin:0 0 1.5rem;scroll-margin-top:7.5rem;max-width:64rem}.sweep-sheet .drawing{width:100%}
.cursor{position:absolute;left:0;top:0;width:100%;pointer-events:none}
.overview>.drawing,.chart .drawing{width:100%}
.key-list{list-style:none;padding:0;display:grid;grid-template-columns:repeat(auto-fill,minmax(24rem,1fr));gap:.3rem 1.2rem}
.key-list li{display:flex;gap:.7rem;align-items:flex-start}
.key-sample{flex:none;width:3.4rem;height:2rem}
.key-grey{fill:#777777}
`;
