/** Words are asked for by id, with grounds; the sentence itself lives in templates. */
export type Say = { readonly id: string; readonly grounds: Readonly<Record<string, string | number | boolean>> };
