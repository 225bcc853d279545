//! What the targets share: answers and shops made up of what can be said, as the bytes choose.

pub mod made_up;
