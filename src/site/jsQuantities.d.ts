/** The one call of js-quantities that is used; the package brings no types. */
declare module "js-quantities" {
  const Qty: { swiftConverter(from: string, to: string): (value: number) => number };
  export = Qty;
}
