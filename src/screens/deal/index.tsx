// Placeholder while this screen is being built in this session.
export function DealScreen() {
  return null;
}
