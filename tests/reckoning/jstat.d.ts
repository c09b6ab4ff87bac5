// The part of jstat that the tests call; the package has no types of its own.
declare module 'jstat' {
  interface Distribution {
    cdf(x: number, ...parameters: number[]): number;
    inv(p: number, ...parameters: number[]): number;
  }
  const jStat: { readonly normal: Distribution; readonly chisquare: Distribution; readonly studentt: Distribution };
  export = jStat;
}
