//! The macros that compute a formula's step and show it from the same tokens.
