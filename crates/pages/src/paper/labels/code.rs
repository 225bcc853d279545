//! A code that a phone reads: an address as a QR code (ISO/IEC 18004).

use std::fmt::Write;

use qrcode::{Color, EcLevel, QrCode};

/// White around the code, in modules; ISO/IEC 18004, 5.3.8 (from memory).
const QUIET: u16 = 4;
/// Side of a module, mm: a phone held close reads it from a printer's usual dots; *common practice*.
const MODULE_MM: f64 = 0.45;

/// An address as a QR code.
#[derive(Debug, Clone)]
pub(super) struct Code {
    /// The dark modules as a path, a unit to a module.
    path: String,
    modules: f64,
}

impl Code {
    /// The code of an address; none where it is too long for one.
    pub(super) fn of(address: &str) -> Option<Self> {
        // Oil and scratches take some of it away: of level M, 15 % may be lost.
        let code = QrCode::with_error_correction_level(address, EcLevel::M).ok()?;
        let colours = code.to_colors();
        let mut path = String::new();
        for (y, row) in (QUIET..).zip(colours.chunks(code.width())) {
            let mut x = QUIET;
            for run in row.chunk_by(|one, other| one == other) {
                let long = u16::try_from(run.len()).ok()?;
                if run.first() == Some(&Color::Dark) {
                    // Writing to a string cannot fail.
                    let _ = write!(path, "M{x} {y}h{long}v1h-{long}z");
                }
                x += long;
            }
        }
        let modules = f64::from(u16::try_from(code.width()).ok()? + 2 * QUIET);
        Some(Self { path, modules })
    }

    /// Its side with the white around it, mm.
    pub(super) fn side(&self) -> f64 {
        self.modules * MODULE_MM
    }

    /// The picture, with its upper left corner there.
    pub(super) fn svg(&self, x: f64, y: f64) -> String {
        let Self { path, modules } = self;
        let side = self.side();
        format!(
            "<svg class=\"code\" x=\"{x:.2}\" y=\"{y:.2}\" width=\"{side:.2}\" height=\"{side:.2}\" viewBox=\"0 0 {modules} {modules}\" \
             shape-rendering=\"crispEdges\"><path d=\"{path}\"/></svg>"
        )
    }
}
