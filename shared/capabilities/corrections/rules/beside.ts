/**
 * A place beside the facts for what another room works out from them. It is freed with them: a map that has
 * the facts as weak keys keeps all that was ever put in until the next great sweep of the memory.
 */
export class Beside {
  #kept: unknown = null;
  get kept(): unknown {
    return this.#kept;
  }
  set kept(value: unknown) {
    this.#kept = value;
  }
}
