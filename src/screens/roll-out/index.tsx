// Placeholder while this screen is being built in this session.
export function RollOutScreen() {
  return null;
}
