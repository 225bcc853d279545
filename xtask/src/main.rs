//! Runs the checks.
fn main() {}
