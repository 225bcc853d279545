//! Where a number can be worked out again, step by step.

use std::collections::BTreeMap;

use reference::{AIR_CHANGES_WITHIN, Fluid};
use schemars::JsonSchema;
use serde::Serialize;
use units::{System, show};

use crate::air::{Room, Use, Way};

/// A sheet of the bench, and what it is given to come to the same number.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Worked {
    /// The name of the sheet.
    pub sheet: String,
    /// What its fields are given, as one would type it.
    pub given: BTreeMap<String, String>,
}

impl Worked {
    fn new<const N: usize>(sheet: &str, given: [(&str, String); N]) -> Self {
        Self { sheet: sheet.to_owned(), given: given.into_iter().map(|(field, text)| (field.to_owned(), text)).collect() }
    }

    /// What fluids do when they meet.
    #[must_use]
    pub fn together(fluids: &[&str]) -> Self {
        Self::new("together", [("fluids", fluids.join(", "))])
    }

    /// What one breathes of a fluid that is used so in this room.
    #[must_use]
    pub fn air(fluid: &Fluid, used: &Use, room: &Room) -> Self {
        let (way, area) = match used.way {
            Way::Tray(area) => ("tray", Some(area)),
            Way::Wiped(area) => ("wiped", Some(area)),
            Way::Sprayed => ("sprayed", None),
        };
        // The sheet reckons with the still end of the air changes it is told; here that end is known already.
        let changes = room.changes * AIR_CHANGES_WITHIN;
        let metric = System::Metric;
        let mut worked = Self::new(
            "air",
            [
                ("fluid", fluid.key.clone()),
                ("amount", show(used.amount, metric)),
                ("way", way.to_owned()),
                ("time", show(used.lasts, metric)),
                ("volume", show(room.volume, metric)),
                ("air_changes", show(changes, metric)),
                ("temperature", show(room.temperature, metric)),
                ("flames", if room.flames { "yes" } else { "no" }.to_owned()),
            ],
        );
        worked.given.extend(area.map(|area| ("area".to_owned(), show(area, metric))));
        worked
    }
}
