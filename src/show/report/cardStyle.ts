/** Cards on screen. */

export const cardStyle = `
.cards{display:grid;grid-template-columns:minmax(0,1fr);gap:1rem}
.card{scroll-margin-top:7.5rem;border:1.5px solid;padding:.7rem .9rem;content-visibility:auto;contain-intrinsic-size:auto 34rem}
.card[hidden]{display:none}
.card-head{display:flex;gap:1.2rem;align-items:flex-start;flex-wrap:wrap}
.card-head h3{min-width:4rem}
.card-head p{margin:0;font-size:.9rem}
.card-body{display:grid;grid-template-columns:minmax(0,27rem) minmax(0,1fr);grid-template-rows:auto auto auto 1fr;column-gap:1.2rem;margin-top:.5rem}
.card-left{grid-row:1/span 4}.card-body>:not(.card-left){grid-column:2}
.card-settings table{font-size:.9rem}
.card-settings th,.card-settings td:not(:last-child){white-space:nowrap;overflow-wrap:normal}
.sweep-link{margin-left:.8rem}
.card-left .drawing{width:100%}
.big{font-size:1.55rem;font-weight:700;margin:0 0 .3rem}
.big span{margin-right:.5em}.big small{font-size:.9rem;font-weight:400}
.big-none{font-size:1.1rem}
.card-sun.meets{border-left:6px solid;padding-left:.6rem;margin-top:.5rem}
.card-notes{font-size:.85rem;margin-top:.4rem}
.caution{font-style:italic}
.now{font-size:.85rem;min-height:2.6em}
.write-in{display:grid;grid-template-columns:repeat(4,1fr);gap:.5rem .8rem;margin:.8rem 0 0}
.write-in dt{font-size:.75rem}.write-in dd{margin:0;height:1.7rem;border-bottom:1px solid}
.write-meter{grid-column:span 2}
.write-set{grid-column:span 2}
.card-foot{font-size:.75rem;margin-top:.5rem}
@media screen and (max-width:60rem){.card-body{grid-template-columns:minmax(0,1fr)}.card-body>:not(.card-left){grid-column:1}.card-left{grid-row:auto}.write-in{grid-template-columns:repeat(2,1fr)}}
@media screen and (max-width:40rem){.card-settings th,.card-settings td:not(:last-child){white-space:normal}.card-settings th,.card-settings td{padding:.1rem .25rem;font-size:.8rem}.card-settings :is(th,td):last-child{overflow-wrap:anywhere}.big span{margin-right:.3em}}
`;
