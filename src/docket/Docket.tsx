export function Docket() {
  return <h2>Docket</h2>;
}
