/** @throws where the file is not there. */
export async function fetchJson(address: string): Promise<unknown> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return response.json();
}
