/** Where the chart of a card stands, and over it what follows the T-0. */

export const CardDrawings = ({ index, drift }: { readonly index: number; readonly drift: string }) => (
  <div class="chart-sheet">
    <div data-drift={index} dangerouslySetInnerHTML={{ __html: drift }} />
    <div data-drift-cursor={index} />
  </div>
);
