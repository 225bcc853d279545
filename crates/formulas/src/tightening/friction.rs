//! The friction of threads by how they were treated.

use units::Range;

/// How a thread and the face under its head were treated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Condition {
    /// Molybdenum disulphide, graphite or PTFE paste, or wax.
    Paste,
    /// Oil or grease on steel.
    Oiled,
    /// As delivered, slightly oily or phosphated.
    AsDelivered,
    /// Zinc plate, dry.
    ZincDry,
    /// Stainless steel or aluminium, dry: it galls and seizes.
    StainlessDry,
    /// Stainless steel, oiled.
    StainlessOiled,
    /// Stainless steel with paste or wax.
    StainlessPaste,
}

/// Friction of a thread wet with threadlocker; the head keeps its own. The low figure is for overload, the high one for coming loose.
/// *Common practice*; whether threadlocker lubricates is disputed.
pub const WET_LOCKER_THREAD: Range<f64> = Range { low: 0.10, likely: 0.17, high: 0.24 };

impl Condition {
    /// Every condition.
    pub const ALL: [Self; 7] =
        [Self::Paste, Self::Oiled, Self::AsDelivered, Self::ZincDry, Self::StainlessDry, Self::StainlessOiled, Self::StainlessPaste];

    /// Low, likely and high friction.
    ///
    /// The bounds are the friction classes A to E of VDI 2230, as quoted by others; the likely value is the middle, rounded, *common
    /// practice*. Dry stainless steel has no upper bound in its class; 0.5 is written here *from memory*.
    #[must_use]
    pub const fn friction(self) -> Range<f64> {
        let (low, likely, high) = match self {
            Self::Paste => (0.04, 0.08, 0.10),
            Self::Oiled => (0.08, 0.12, 0.16),
            Self::AsDelivered => (0.14, 0.18, 0.24),
            Self::ZincDry => (0.14, 0.22, 0.35),
            Self::StainlessDry => (0.30, 0.40, 0.50),
            Self::StainlessOiled => (0.20, 0.27, 0.35),
            Self::StainlessPaste => (0.08, 0.14, 0.24),
        };
        Range { low, likely, high }
    }

    /// Whether such a thread seizes whatever the torque, so that it wants paste and slow turning.
    #[must_use]
    pub const fn seizes(self) -> bool {
        matches!(self, Self::StainlessDry)
    }
}
