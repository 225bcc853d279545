//! The user's description of a shop: types and reader.
