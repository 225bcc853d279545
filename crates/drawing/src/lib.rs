//! Plain line drawings of machines, with their points as numbers round the outline.
//!
//! A machine is sketched in one file of `machines/`: parts out of a small vocabulary (`shape.rs`), each in its box, and the spots where its
//! points are. [`draw`] sets the numbers round the sketch, so that no two lie on each other. Every point has a number: one that the
//! sketch does not know stands in a row beneath it, and a machine that has no sketch is a plain box.
//!
//! The ink is the colour of the text around the picture; the paper is the style sheet's `--paper`, and the browser's own where there is
//! none. No shape has a colour or an id, so that many pictures can stand on one page.
//!
//! **Invariant:** the same points give the same picture, byte for byte.

mod labels;
mod machines;
mod pen;
mod picture;
mod shape;
mod sketch;

pub use picture::{Drawing, draw};
