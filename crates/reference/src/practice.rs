//! What the trade does: which class of fluid for which work, in what order of preference.

mod cutting;
mod joining;
mod surface;

pub use cutting::{Cut, CuttingPower, DrillFactor, Operation, TapFluid, TapPressure};
pub use joining::{Lock, Locking, MetalFactor, Refusal, Sealing, ThreadKind};
pub use surface::{Cleaning, Finish, FinishRule};
