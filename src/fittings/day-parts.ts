/** What the words about the day of the test are told: with what the ends are closed, and what leads the pump in. */
export type DayParts = { readonly unions: boolean; readonly flanged: boolean; readonly plain: boolean; readonly coupling: string };

/** Of a fitting that is no valve with ends of its own: by a union, or in the place that it is for. */
export const dayParts = ({ coupling, union }: { readonly coupling: string; readonly union: 'yes' | 'no' }): DayParts => ({
  ...{ unions: union === 'yes', flanged: false, plain: false, coupling },
});
