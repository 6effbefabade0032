/** The heads of a table's columns; on the page what a column means can be had by pointing at it. */

type Head = string | readonly [head: string, meaning: string];

export const HeadRow = ({ heads }: { readonly heads: readonly Head[] }) => (
  <tr>
    {heads.map((one) => {
      const [head, meaning] = typeof one === "string" ? [one] : one;
      return (
        <th key={head} scope="col" title={meaning}>
          {head}
        </th>
      );
    })}
  </tr>
);
