export function Plates() {
  return <h2>Plates</h2>;
}
