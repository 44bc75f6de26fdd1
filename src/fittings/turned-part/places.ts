/** Which keys of the file a finding about a part of one's own is about, where its description did not say so already. */
export const TURNED_PART_PLACES: Readonly<Record<string, readonly string[]>> = {
  'design.no-bar': ['bar', 'material'],
  'chart.cannot-be-met': ['outside.@{feature}', 'inside.@{feature}'],
  'plan.no-route': ['outside.@{feature}', 'inside.@{feature}', 'side.@{feature}', '{end}.slot', '{end}'],
};
